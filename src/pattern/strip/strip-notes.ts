import { heldDigits, placedDigits } from '../../block/block.ts';
import { heightAt } from '../../geometry/broken-line.ts';
import { boxOf } from '../../geometry/path-measures.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import { CAUTIONS } from '../cautions.ts';
import { DASHES } from '../dashes.ts';
import type { CutList, MakingNotes } from '../making-notes.ts';
import { differentialWedge } from './differential-wedge.ts';
import { sectionView } from './section-view.ts';
import type { StripFigures } from './strip-report.ts';
import { factLines } from './strip-sheet.ts';
import { uprightMarks } from './upright-marks.ts';

const mm = (value: number) => `${plain(value, 1)} mm`;

/** The words and drawings that go with a strip. `left` is what found no room on it. */
export function stripNotes(f: StripFigures, hand: Hand, date: string | null, left: readonly string[]): MakingNotes {
  return {
    code: hand.code,
    side: hand.side,
    block: f.block.title,
    invented: hand.invented,
    // The first two lines (code, side, block) stand in the head of every page.
    facts: factLines(f, hand, date, left).slice(2),
    legend: [
      { dashes: [], layer: 'CUT', title: 'cut' },
      { dashes: DASHES.dorsal, layer: 'MARK', title: 'finger midline, strip runs dorsal' },
      { dashes: DASHES.palmar, layer: 'MARK', title: 'finger midline, strip runs palmar' },
      { dashes: DASHES.border, layer: 'MARK', title: 'turn round a border finger' },
      { dashes: DASHES.web, layer: 'MARK', title: 'web space' },
      { dashes: DASHES.limit, layer: 'MARK', title: 'end of the overlap; trim' },
    ],
    view: {
      heading: `Section, ${hand.side} hand`,
      caption: 'Seen from the fingertips, dorsal up; the inner layer lies against the held digits.',
      drawn: sectionView(f.path, hand.side, f.options),
    },
    cutLists: [cutList(f)],
    gauges: [
      {
        title: `Differential, ${plain(f.options.differential, 1)} degrees: cut out, hold between the digits`,
        drawn: differentialWedge(f.options.differential),
      },
    ],
    steps: steps(f),
    checks: checks(f, hand),
    cautions: Object.values(CAUTIONS),
    made: { kind: 'strip', figures: f, hand },
  };
}

function cutList(f: StripFigures): CutList {
  const box = boxOf([f.flat.outline]);
  const edges = (v: number) => [heightAt(f.flat.proximal, v), heightAt(f.flat.distal, v)] as const;
  const rows = uprightMarks(f.path, f.flat, f.options).map((mark) => ({
    at: mark.v - f.flat.start,
    title: mark.title,
    edges: edges(mark.v),
  }));
  const relief = f.reliefs.filter((r) => r.depth > 0);
  const remarks = [
    ...(f.flat.frame
      ? [
          'The strip is curved for fingers that taper: cut along the drawn line. The figures are those of the strip before it is curved; along it they are true where each finger was measured.',
        ]
      : []),
    'Edges: mm from the line of the foremost web, distal +; straight between the rows, corners round.',
    ...relief.map(
      (r) =>
        `Palmar to the ${r.digit} finger, from one of its sides to the other, the distal edge is cut back by ${mm(r.depth)} (at the midline), level, in round steps.`,
    ),
  ];
  return {
    title: 'Strip',
    length: f.flat.flatLength,
    width: box.maxY - box.minY,
    from: 'mm from the starting end (corner mark)',
    rows: [...rows, { at: f.flat.flatLength, title: 'end of the strip', edges: edges(f.flat.end) }],
    remarks,
  };
}

/** The way of the strip in words, from the passes and turns in the order in which they come. */
function way(f: StripFigures): string {
  const passes = f.path.passes.map((p) => ({ u: p.u, text: `${p.aspect} to ${p.digit}` }));
  const turns = f.path.borderTurns.map((t) => ({ u: t.u, text: `round the ${t.border} side` }));
  return [...passes, ...turns]
    .sort((a, b) => a.u - b.u)
    .map((stop) => stop.text)
    .join(', ');
}

/** `long`, `long and ring`. */
function named(digits: readonly DigitName[]): string {
  return digits.join(' and ');
}

/** The best measurement of the path is the path. */
function paperStep({ asked }: StripFigures): string {
  return asked.paperReading === 'none'
    ? 'Paper trial. Weave a paper strip (draw --paper-trial) round the fingers, read its scale and draw this strip again with the reading, before plastic is heated.'
    : `Paper trial: done, read ${plain(asked.paperReading, 1)} mm; this strip is drawn for that reading.`;
}

function motion(f: StripFigures): 'extension' | 'flexion' {
  return f.path.held === 'raised' ? 'extension' : 'flexion';
}

function steps(f: StripFigures): readonly string[] {
  const o = f.options;
  const held = named(heldDigits(f.block));
  const hold = `about ${plain(o.differential, 1)} degrees more MP ${motion(f)} than the neighbours`;
  const overlap =
    o.seam === 'lap'
      ? `lay the ends over each other by ${mm(o.seamAllowance)}, seam mark on seam mark`
      : `pinch the tabs of ${mm(o.seamAllowance)} together at the seam marks`;
  // Where the band closes on a ramp, closing it longer or shorter shifts the edges of the two ends against each other.
  const shift =
    Math.abs(f.seamSlope) < 0.05
      ? ''
      : ` For each mm that it closes longer or shorter than drawn, the edges of the two ends part by ${plain(Math.abs(f.seamSlope), 1)} mm along the hand; trim them even.`;
  const tack =
    o.closure === 'tacked'
      ? ` Press the outer layer onto the inner one at the middle of ${held} and bond it there.`
      : ' Leave the outer layer taut across the held digits.';
  return [
    'Measure. Both 100 mm bars and the card outline on this sheet must be true; compare a few measurements with the hand.',
    paperStep(f),
    `Cut. Outside up, distal edge up (at held digits the outside touches skin): cut the outline from sheet ${mm(o.thickness)} thick and carry the marks over, the side of the hand among them.`,
    "Heat in a water bath of 65 to 71 C, less than a minute; the sheet's own instructions come first.",
    'Blot dry, wait, and test it on your own skin before it goes onto the patient.',
    `Drape, with ${held} held in ${hold}. From the corner mark the strip runs: ${way(f)}, and back to the seam. Do not stretch it more than planned.`,
    `Seam: ${overlap}.${shift} Uncoated sheet bonds to itself when dry and hot; scrape or wipe the coating off coated sheet first.${tack}`,
    'Cool on the hand until hard, the digits still held.',
    'Check full PIP flexion and full PIP extension of every digit, then take the strip off and put it on again.',
    'Trim the spare length and round every edge and corner; nothing square or sharp lies on skin.',
  ];
}

function checks(f: StripFigures, hand: Hand): readonly string[] {
  const held = heldDigits(f.block);
  const free = Object.entries(f.freePip).map(([digit, angle]) => `${digit} ${plain(angle, 0)}`);
  const target = hand.target?.digit ?? null;
  return [
    'Bars measured: across ........ mm, along ........ mm; 99.5 to 100.5 is good.',
    'Before making, the pencil test: a pencil woven over and under the fingers as the strip will run. Active PIP motion is better: yes / no.',
    `MP of ${named(held)} against the neighbours: ........ degrees of ${motion(f)} (planned ${plain(f.options.differential, 1)}).`,
    `PIP flexion free${free.length > 0 ? ` (predicted to ${free.join(', ')} degrees)` : ''}: ${digitBlanks(f)}.`,
    `PIP extension free: ${digitBlanks(f)}.`,
    ...(target ? [`Active PIP motion of the ${target} finger, without ........ with ........ degrees.`] : []),
    'Distal edge clear of every palmar PIP crease, proximal edge clear of the webs (2 to 3 mm).',
    'Goes on and off over the PIP joints without force.',
    'Edges round; no rocking, no pinching, no blanching.',
    'Skin looked at after about 20 minutes of wear: redness gone within 15 to 20 minutes.',
  ];
}

function digitBlanks(f: StripFigures): string {
  return placedDigits(f.block)
    .map(({ digit }) => `${digit} ......`)
    .join(' ');
}
