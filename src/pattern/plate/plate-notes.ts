import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import { CAUTIONS } from '../cautions.ts';
import type { CutList, LegendRow, MakingNotes } from '../making-notes.ts';
import { angleGauge } from './angle-gauge.ts';
import { holdsInWords } from './plate-design.ts';
import { PLATE_LINES, type PlateLine } from './plate-marks.ts';
import type { PlateFigures } from './plate-report.ts';
import { factLines } from './plate-sheet.ts';
import { PLATE_CAUTIONS, PLATE_STEPS } from './plate-steps.ts';

/** The words and drawings that go with a plate. `used` are the kinds of line that it has, `left` what found no room on it. */
export function plateNotes(
  f: PlateFigures,
  hand: Hand,
  date: string | null,
  geometryVersion: string,
  left: readonly string[],
  used: ReadonlySet<string>,
): MakingNotes {
  const { design } = f;
  return {
    code: hand.code,
    side: hand.side,
    block: `${design.title}, ${holdsInWords(design)}`,
    invented: hand.invented,
    // The first three lines (code, side, title, what it holds) stand in the head of every page; the straps have a list of their own.
    facts: factLines(f, hand, date, geometryVersion, left).slice(3),
    legend: legend(used),
    view: null,
    cutLists: straps(f),
    gauges: [
      {
        title: `Angle gauge, ${plain(design.angle, 1)} degrees: cut out, ring on the MP joint from the side`,
        drawn: angleGauge(design.angle),
      },
    ],
    steps: PLATE_STEPS,
    checks: checks(f),
    cautions: [...PLATE_CAUTIONS, ...Object.values(CAUTIONS)],
    made: { kind: 'plate', figures: f, hand },
  };
}

function legend(used: ReadonlySet<string>): readonly LegendRow[] {
  const kinds = (Object.keys(PLATE_LINES) as PlateLine[]).filter((kind) => used.has(kind));
  return [
    { dashes: [], layer: 'CUT', title: 'cut' },
    ...kinds.map((kind): LegendRow => ({ dashes: PLATE_LINES[kind].dashes, layer: 'MARK', title: PLATE_LINES[kind].words })),
  ];
}

function straps(f: PlateFigures): readonly CutList[] {
  return f.straps.map((strap) => ({
    title: `Strap ${strap.id}, hook and loop`,
    length: strap.length,
    width: strap.width,
    from: '',
    rows: [],
    remarks: [`Goes ${strap.where}.`],
  }));
}

function checks({ design }: PlateFigures): readonly string[] {
  const blanks = design.digits.map((digit) => `${digit} ......`).join(' ');
  return [
    'Bars measured: across ........ mm, along ........ mm; 99.5 to 100.5 is good.',
    `MP joints at ........ degrees by the gauge (planned ${plain(design.angle, 1)}).`,
    `PIP flexion free: ${blanks}.`,
    `PIP extension free: ${blanks}.`,
    'Wrist bends freely both ways, thumb reaches across, digits that are not held make a full fist.',
    'Proximal edge clear of the wrist crease and the ulnar head; thumb web clear; edges round and flared.',
    'Straps hold without pulling; no rocking, no pinching, no blanching.',
    'Skin looked at after about 20 minutes of wear: redness gone within 15 to 20 minutes.',
  ];
}
