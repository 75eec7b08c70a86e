import { blockSketch } from '../block/block-sketch.ts';
import type { ChosenBlock } from '../block/choose-block.ts';
import { CAUTIONS } from '../pattern/cautions.ts';
import type { StripReport } from '../pattern/strip/strip-report.ts';
import { plain } from '../units/number.ts';
import { fileLine, type WrittenFile } from './write-patterns.ts';

/** What `draw` says in words: the block and why, the strip's figures, cautions, and last the files with their true sizes. */
export function describeDrawing(report: StripReport, chosen: ChosenBlock, files: readonly WrittenFile[]): string {
  const mm = (value: number) => `${plain(value, 1)} mm`;
  const lines = [
    `${chosen.block.title} (${chosen.block.id}): ${chosen.why}.`,
    '',
    blockSketch(chosen.block),
    '',
    `strip       ${mm(report.flatLength)} long (95 % band ${plain(report.lengthBand95[0], 1)} to ${mm(report.lengthBand95[1])}), ${mm(report.flatWidth)} wide, ${report.closure}`,
    ...report.relief.map((r) => `relief      ${mm(r.depth)} off the distal edge, palmar to the ${r.digit} finger`),
    `free PIP    ${Object.entries(report.freePipFlexion)
      .map(([digit, angle]) => `${digit} ${plain(angle, 0)}`)
      .join(', ')} degrees of flexion predicted`,
    ...report.loops.map(
      (loop) => `loop        ${loop.digits.join(' and ')}: ${mm(loop.innerCircumference)} round inside, ring size ${loop.isoRingSize}`,
    ),
    ...(report.estimated.length > 0 ? [`ESTIMATED   ${report.estimated.join(', ')}`] : []),
    '',
    CAUTIONS.heat,
    CAUTIONS.contraindications,
    CAUTIONS.model,
    CAUTIONS.licensed,
    '',
    ...files.map((file) =>
      fileLine(
        file,
        file.path.includes('-paper_') ? ', paper strip' : `, strip ${plain(report.flatLength, 2)} x ${plain(report.flatWidth, 2)} mm`,
      ),
    ),
  ];
  return `${lines.join('\n')}\n`;
}
