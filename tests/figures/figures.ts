/** What the scripts that write docs/ need of the source, in one bundle. */
export { dxfWriter } from '../../src/writers/dxf/dxf.ts';
export { PENS } from '../../src/writers/pdf/pdf.ts';
export { svgNodeWriter } from '../../src/writers/svg/svg-node.ts';
export { drawPage, pageSizes } from '../read-pdf.ts';
export { accuracyText } from './accuracy-text.ts';
export { equalWork } from './equal-work.ts';
export { freeFlexionShares } from './free-flexion-shares.ts';
export { exponentOf } from './growth.ts';
export { sampleFiles, strokedBox } from './sample-files.ts';
