import { blockSketch } from '../block/block-sketch.ts';
import type { ChosenBlock } from '../block/choose-block.ts';
import { BEND_FORMS, type BendForm } from '../pattern/plate/bend-forms.ts';
import type { FaceReport, PlateReport } from '../pattern/plate/plate-report.ts';
import type { StripReport } from '../pattern/strip/strip-report.ts';
import { plain } from '../units/number.ts';
import { cautionsEnglish } from '../words/cautions.ts';
import { plateEnglish } from '../words/pattern/english.ts';
import { fileLine, type WrittenFile } from './write-patterns.ts';

/** What `draw` says in words: the block and why, the strip's figures, cautions, and last the files with their true sizes. */
export function describeDrawing(report: StripReport, chosen: ChosenBlock, files: readonly WrittenFile[]): string {
  const mm = (value: number) => `${plain(value, 1)} mm`;
  const lines = [
    `${chosen.block.title} (${chosen.block.id}): ${chosen.why}.`,
    '',
    blockSketch(chosen.block),
    '',
    `strip       ${mm(report.flatLength)} long (95 % band ${plain(report.lengthBand95[0], 1)} to ${mm(report.lengthBand95[1])}${report.paperTrial ? ', of the paper reading' : ''}), ${mm(report.flatWidth)} wide, ${report.closure}`,
    ...report.relief.map((r) => `relief      ${mm(r.depth)} off the distal edge, palmar to the ${r.digit} finger`),
    `free PIP    ${Object.entries(report.freePipFlexion)
      .map(([digit, angle]) => `${digit} ${plain(angle, 0)}`)
      .join(', ')} degrees of flexion predicted`,
    ...report.loops.map(
      (loop) => `loop        ${loop.digits.join(' and ')}: ${mm(loop.innerCircumference)} round inside, ring size ${loop.isoRingSize}`,
    ),
    ...(report.estimated.length > 0 ? [`ESTIMATED   ${report.estimated.join(', ')}`] : []),
    '',
    cautionsEnglish.heat,
    cautionsEnglish.contraindications,
    cautionsEnglish.model,
    cautionsEnglish.licensed,
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

/** What a way to fold would cost, or that it is not to be had; what is none is not told. */
function bendInWords(form: BendForm, cost: FaceReport['bend']['costs'][BendForm]): string {
  if (!cost) return `${form} not to be had`;
  const costs = [
    ['stretches', plain(100 * cost.stretch, 1), '%'],
    ['shears', plain(cost.shear, 1), 'degrees'],
    ['misses', plain(cost.miss, 1), 'mm'],
    ['pushes aside', plain(cost.swing, 1), 'degrees'],
  ].filter(([, value]) => value !== '0');
  return `${form} ${costs.length === 0 ? 'costs nothing' : costs.map((words) => words.join(' ')).join(', ')}`;
}

/** What `draw --plate` says in words: the plate's figures, cautions, and last the files with their true sizes. */
export function describePlate(report: PlateReport, title: string, files: readonly WrittenFile[]): string {
  const mm = (value: number) => `${plain(value, 1)} mm`;
  const [low, high] = report.angleRange;
  const free = Object.entries(report.freePipFlexion);
  const lines = [
    `${title}.`,
    '',
    `angle       MP ${plain(report.angle, 1)} degrees (${low} to ${high} possible; a starting point, common practice, no source: the clinician decides)`,
    `palm        ${plain(report.section.breadth, 1)} broad, ${plain(report.section.circumference, 1)} round, ${mm(report.section.thickness)} thick`,
    ...report.faces.flatMap((face) => [
      `${face.face.padEnd(12)}${plain(face.width, 1)} x ${mm(face.length)} flat, bend ${face.bend.form}, ${mm(Math.max(...face.bend.parts.map((part) => part.length)))} long, tightest corner ${mm(face.smallestRadius)}`,
      `            folded along its marks on the modelled hand: ${plain(face.fold.leastGap, 1)} to ${mm(face.fold.worstGap)} off the skin, most at the ${face.fold.worstAt} finger; MP joints within ${mm(face.fold.mpMiss)} of the bend, fingers pushed aside ${plain(face.fold.swing, 1)} degrees, sheet stretched ${plain(100 * face.fold.stretch, 1)} %, sheared ${plain(face.fold.shear, 1)} degrees`,
      `            bend ${face.bend.asked}: ${BEND_FORMS.map((form) => bendInWords(form, face.bend.costs[form])).join('; ')}`,
      `            free: ${mm(face.fold.pipClearance)} to the PIP joints, ${face.fold.thumbClearance === null ? 'no wing at the thumb' : `${mm(face.fold.thumbClearance)} to the thumb web`}`,
      ...face.digits
        .filter((d) => d.shortened > 0.05)
        .map(
          (d) => `            ${d.digit}: ${mm(d.shortened)} shorter than its PIP joint allows, so that the step to its neighbour is round`,
        ),
    ]),
    `wrist       ${mm(report.wristFree)} free to the wrist crease`,
    ...(free.length > 0
      ? [`free PIP    ${free.map(([digit, angle]) => `${digit} ${plain(angle, 0)}`).join(', ')} degrees of flexion predicted`]
      : []),
    ...report.straps.map((s) => `strap ${s.id}     ${plain(s.width, 0)} wide, ${plain(s.length, 0)} long, ${s.where}`),
    ...(report.estimated.length > 0 ? [`ESTIMATED   ${report.estimated.join(', ')}`] : []),
    '',
    ...Object.values(plateEnglish.caution),
    cautionsEnglish.heat,
    cautionsEnglish.contraindications,
    cautionsEnglish.model,
    cautionsEnglish.licensed,
    '',
    ...files.map((file) => fileLine(file)),
  ];
  return `${lines.join('\n')}\n`;
}
