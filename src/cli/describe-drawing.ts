import type { Block } from '../block/block.ts';
import { blockSketch } from '../block/block-sketch.ts';
import { BEND_FORMS, type BendForm } from '../pattern/plate/bend-forms.ts';
import type { PlateDesign } from '../pattern/plate/plate-design.ts';
import { strapPlace } from '../pattern/plate/plate-names.ts';
import type { FaceReport, PlateReport } from '../pattern/plate/plate-report.ts';
import type { StripReport } from '../pattern/strip/strip-report.ts';
import type { Taken } from '../sheet/plastic/shelf.ts';
import { blockTitle, listed, measureName } from '../words/hand-words.ts';
import type { Language } from '../words/language.ts';
import { speechIn } from '../words/speech.ts';
import { type TerminalSpeech, terminalSpeech } from '../words/terminal/terminal-words.ts';
import { fileLine, type WrittenFile } from './write-patterns.ts';

const LABEL = 12;

/** What `draw` says of a strip: the block and why, the strip's figures, cautions, and last the files with their true sizes. */
export function describeDrawing(report: StripReport, block: Block, why: string, files: readonly WrittenFile[], language: Language): string {
  const t = terminalSpeech(language);
  const { w, number } = t;
  const { hand, strip, cautions } = speechIn(language);
  const [low, high] = report.lengthBand95;
  const [length, width] = [report.flatLength, report.flatWidth];
  const lines = [
    `${blockTitle(block, language)} (${block.id}): ${why}.`,
    '',
    blockSketch(block, hand.short),
    '',
    line(
      w.label.strip,
      w.strip(
        number(length, 1),
        number(low, 1),
        number(high, 1),
        report.paperTrial !== null,
        number(width, 1),
        strip.choice[report.closure],
      ),
    ),
    ...report.relief.map((r) => line(w.label.relief, w.relief(number(r.depth, 1), hand.finger[r.digit]))),
    ...freePipLines(report.freePipFlexion, language),
    ...report.loops.map(({ digits, innerCircumference, isoRingSize }) => {
      const names = digits.map((digit) => hand.short[digit]);
      return line(w.label.loop, w.loop(listed(names, hand.and), number(innerCircumference, 1), number(isoRingSize)));
    }),
    ...estimatedLines(report.estimated, language),
    '',
    ...[cautions.heat, cautions.contraindications, cautions.model, cautions.licensed],
    '',
    ...files.map((file) =>
      fileLine(file, t, file.path.includes('-paper_') ? w.file.paperStrip : w.file.strip(number(length, 2), number(width, 2))),
    ),
  ];
  return `${lines.join('\n')}\n`;
}

/** What `draw --plate` says: the plate's figures, cautions, and last the files with their true sizes. */
export function describePlate(report: PlateReport, title: string, files: readonly WrittenFile[], language: Language): string {
  const t = terminalSpeech(language);
  const { w, number } = t;
  const speech = speechIn(language);
  const { plate: words, cautions } = speech;
  const [low, high] = report.angleRange;
  const { breadth, circumference, thickness } = report.section;
  const lines = [
    `${title}.`,
    '',
    line(w.label.angle, w.plate.angle(number(report.angle, 1), `${low}`, `${high}`)),
    line(w.label.palm, w.plate.palm(number(breadth, 1), number(circumference, 1), number(thickness, 1))),
    ...report.faces.flatMap((face) => faceLines(face, t)),
    line(w.label.wrist, w.plate.wrist(number(report.wristFree, 1))),
    ...freePipLines(report.freePipFlexion, language),
    ...report.straps.map((strap) => {
      const place = strapPlace(strap, report.plate.digits, speech);
      return line(w.label.strap(strap.id), w.plate.strap(number(strap.width, 0), number(strap.length, 0), place));
    }),
    ...estimatedLines(report.estimated, language),
    '',
    ...Object.values(words.caution),
    ...[cautions.heat, cautions.contraindications, cautions.model, cautions.licensed],
    '',
    ...files.map((file) => fileLine(file, t)),
  ];
  return `${lines.join('\n')}\n`;
}

function faceLines(
  { face, width, length, bend, smallestRadius, fold, digits }: FaceReport,
  { w: { plate: w }, number, language }: TerminalSpeech,
) {
  const { hand } = speechIn(language);
  const mm = (value: number) => number(value, 1);
  const longest = Math.max(...bend.parts.map((part) => part.length));
  const costs = BEND_FORMS.map((form) => bendInWords(form, bend.costs[form], w, mm));
  return [
    line(hand.aspect[face], w.face(mm(width), mm(length), w.form[bend.form], mm(longest), mm(smallestRadius))),
    ...[
      w.fold(
        mm(fold.leastGap),
        mm(fold.worstGap),
        hand.finger[fold.worstAt],
        mm(fold.mpMiss),
        mm(fold.swing),
        mm(100 * fold.stretch),
        mm(fold.shear),
      ),
      w.bend(w.form[bend.asked], costs.join('; ')),
      w.free(mm(fold.pipClearance), fold.thumbClearance === null ? '' : mm(fold.thumbClearance)),
      ...digits.filter((d) => d.shortened > 0.05).map((d) => w.shortened(hand.short[d.digit], mm(d.shortened))),
    ].map((words) => line('', words)),
  ];
}

/** What a way to fold would cost, or that it is not to be had; what is none is not told. */
function bendInWords(
  form: BendForm,
  cost: FaceReport['bend']['costs'][BendForm],
  w: TerminalSpeech['w']['plate'],
  number: (value: number) => string,
): string {
  if (!cost) return `${w.form[form]} ${w.cost.notToBeHad}`;
  const costs = [
    { say: w.cost.stretch, value: number(100 * cost.stretch) },
    { say: w.cost.shear, value: number(cost.shear) },
    { say: w.cost.miss, value: number(cost.miss) },
    { say: w.cost.swing, value: number(cost.swing) },
  ].filter(({ value }) => value !== '0');
  return `${w.form[form]} ${costs.length === 0 ? w.cost.none : costs.map(({ say, value }) => say(value)).join(', ')}`;
}

function freePipLines(angles: StripReport['freePipFlexion'], language: Language): readonly string[] {
  const { w, number } = terminalSpeech(language);
  const { hand } = speechIn(language);
  const list = Object.entries(angles).map(([digit, angle]) => `${hand.short[digit as PlateDesign['digits'][number]]} ${number(angle, 0)}`);
  return list.length === 0 ? [] : [line(w.label.freePip, w.freePip(list.join(', ')))];
}

function estimatedLines(estimated: readonly string[], language: Language): readonly string[] {
  const { w } = terminalSpeech(language);
  const { hand } = speechIn(language);
  return estimated.length === 0 ? [] : [line(w.label.estimated, estimated.map((where) => measureName(where, hand)).join(', '))];
}

function line(label: string, words: string): string {
  return `${label.padEnd(LABEL)}${words}`;
}

/** What to take from the shelf and what to cut off, or that it is to be cut anew. */
export function takenText({ wanted, from, cutOff }: Taken, { w: { shelf: w }, number }: TerminalSpeech): string {
  const mm = (value: number) => number(value, 1);
  return from === null ? w.none(mm(wanted.length), mm(wanted.width)) : w.take(from.id, mm(from.length), mm(from.width), mm(cutOff));
}
