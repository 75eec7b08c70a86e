import type { Hand } from '../../hand/hand.ts';
import type { Speech } from '../../words/speech.ts';
import type { CutList, LegendRow, MakingNotes } from '../making-notes.ts';
import { angleGauge } from './angle-gauge.ts';
import { PLATE_LINES, type PlateLine } from './plate-marks.ts';
import { holdsIn, plateName, strapPlace } from './plate-names.ts';
import type { PlateFigures } from './plate-report.ts';
import { factLines } from './plate-sheet.ts';

/** The words and drawings that go with a plate. `used` are the kinds of line that it has, `left` what found no room on it. */
export function plateNotes(
  f: PlateFigures,
  hand: Hand,
  date: string | null,
  left: readonly string[],
  used: ReadonlySet<string>,
  speech: Speech,
): MakingNotes {
  const { design } = f;
  const { plate: w, number } = speech;
  return {
    code: hand.code,
    side: hand.side,
    block: w.name(plateName(design, speech), holdsIn(design, speech)),
    invented: hand.invented,
    // The first three lines (code, side, title, what it holds) stand in the head of every page; the straps have a list of their own.
    facts: factLines(f, hand, date, left, speech).slice(3),
    legend: legend(used, speech),
    view: null,
    cutLists: straps(f, speech),
    gauges: [
      {
        title: w.gauge.title(number(design.angle, 1)),
        drawn: angleGauge(design.angle, speech),
      },
    ],
    steps: Object.values(w.step),
    checks: checks(f, speech),
    cautions: [...Object.values(w.caution), ...Object.values(speech.cautions)],
    made: { kind: 'plate', figures: f, hand },
  };
}

function legend(used: ReadonlySet<string>, { plate: w, strip }: Speech): readonly LegendRow[] {
  const kinds = (Object.keys(PLATE_LINES) as PlateLine[]).filter((kind) => used.has(kind));
  return [
    { dashes: [], layer: 'CUT', title: strip.legend.cut },
    ...kinds.map((kind): LegendRow => ({ dashes: PLATE_LINES[kind], layer: 'MARK', title: w.line[kind] })),
  ];
}

function straps(f: PlateFigures, speech: Speech): readonly CutList[] {
  const { plate: w } = speech;
  return f.straps.map((strap) => ({
    title: w.strap.title(strap.id),
    length: strap.length,
    width: strap.width,
    from: '',
    rows: [],
    remarks: [w.strap.goes(strapPlace(strap, f, speech))],
  }));
}

function checks({ design }: PlateFigures, { plate: w, strip, hand: names, number }: Speech): readonly string[] {
  const blanks = design.digits.map((digit) => `${names.short[digit]} ......`).join(' ');
  return [
    strip.check.bars,
    w.check.mp(number(design.angle, 1)),
    strip.check.flexion('', blanks),
    strip.check.extension(blanks),
    w.check.free,
    w.check.clear,
    w.check.straps,
    strip.check.skin,
  ];
}
