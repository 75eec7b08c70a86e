/** What the scripts that write docs/ need of the source, in one bundle. */
export { dxfWriter } from '../../src/writers/dxf.ts';
export { svgNodeWriter } from '../../src/writers/svg-node.ts';
export { accuracyText } from './accuracy-text.ts';
export { equalWork } from './equal-work.ts';
export { sampleFiles } from './sample-files.ts';
