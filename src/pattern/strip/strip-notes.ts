import { heldDigits, placedDigits } from '../../block/block.ts';
import { heightAt } from '../../geometry/broken-line.ts';
import { boxOf } from '../../geometry/path.ts';
import type { DigitName } from '../../hand/digits.ts';
import type { Hand } from '../../hand/hand.ts';
import { blockTitle, listed } from '../../words/hand-words.ts';
import type { Speech } from '../../words/speech.ts';
import { DASHES } from '../dashes.ts';
import type { CutList, MakingNotes } from '../making-notes.ts';
import { differentialWedge } from './differential-wedge.ts';
import { sectionView } from './section-view.ts';
import type { StripFigures } from './strip-report.ts';
import { factLines } from './strip-sheet.ts';
import { uprightMarks } from './upright-marks.ts';

/** The words and drawings that go with a strip. `left` is what found no room on it. */
export function stripNotes(f: StripFigures, hand: Hand, date: string | null, left: readonly string[], speech: Speech): MakingNotes {
  const { strip: w, hand: names, number } = speech;
  return {
    code: hand.code,
    side: hand.side,
    block: blockTitle(f.block, speech.language),
    invented: hand.invented,
    // The first two lines (code, side, block) stand in the head of every page.
    facts: factLines(f, hand, date, left, speech).slice(2),
    legend: [
      { dashes: [], layer: 'CUT', title: w.legend.cut },
      { dashes: DASHES.dorsal, layer: 'MARK', title: w.legend.dorsal },
      { dashes: DASHES.palmar, layer: 'MARK', title: w.legend.palmar },
      { dashes: DASHES.border, layer: 'MARK', title: w.legend.border },
      { dashes: DASHES.web, layer: 'MARK', title: w.legend.web },
      { dashes: DASHES.limit, layer: 'MARK', title: w.legend.limit },
    ],
    view: {
      heading: w.section.heading(names.side[hand.side]),
      caption: w.section.caption,
      drawn: sectionView(f.path, hand.side, f.options, speech),
    },
    cutLists: [cutList(f, speech)],
    gauges: [
      {
        title: w.gauge(number(f.options.differential, 1)),
        drawn: differentialWedge(f.options.differential, speech),
      },
    ],
    steps: steps(f, speech),
    besidePictures: [seamStep(f, speech)],
    checks: checks(f, hand, speech),
    cautions: Object.values(speech.cautions),
    made: { kind: 'strip', figures: f, hand },
  };
}

function cutList(f: StripFigures, speech: Speech): CutList {
  const { strip: w, hand: names, number } = speech;
  const box = boxOf([f.flat.outline]);
  const edges = (v: number) => [heightAt(f.flat.proximal, v), heightAt(f.flat.distal, v)] as const;
  const rows = uprightMarks(f.path, f.flat, f.options, speech).map((mark) => ({
    at: mark.v - f.flat.start,
    title: mark.title,
    edges: edges(mark.v),
  }));
  // What would be said as 0 mm is not cut back.
  const relief = f.reliefs.filter((r) => r.depth >= 0.05);
  const remarks = [
    ...(f.flat.frame ? [w.cutList.curved] : []),
    w.cutList.edges,
    ...relief.map((r) => w.cutList.relief(names.finger[r.digit], `${number(r.depth, 1)} mm`)),
  ];
  return {
    title: w.cutList.strip,
    length: f.flat.flatLength,
    width: box.maxY - box.minY,
    from: w.cutList.from,
    rows: [...rows, { at: f.flat.flatLength, title: w.mark.end, edges: edges(f.flat.end) }],
    remarks,
  };
}

/** The way of the strip in words, from the passes and turns in the order in which they come. */
function way(f: StripFigures, { strip: w, hand: names }: Speech): string {
  const passes = f.path.passes.map((p) => ({ u: p.u, text: w.way.pass(names.aspect[p.aspect], names.short[p.digit]) }));
  const turns = f.path.borderTurns.map((t) => ({ u: t.u, text: w.way.turn[t.border] }));
  return [...passes, ...turns]
    .sort((a, b) => a.u - b.u)
    .map((stop) => stop.text)
    .join(', ');
}

/** `long`, `long and ring`. */
function named(digits: readonly DigitName[], { hand: names }: Speech): string {
  return listed(
    digits.map((digit) => names.short[digit]),
    names.and,
  );
}

function motion(f: StripFigures): 'extension' | 'flexion' {
  return f.path.held === 'raised' ? 'extension' : 'flexion';
}

function steps(f: StripFigures, speech: Speech): readonly string[] {
  const { strip: w, number } = speech;
  const mm = (value: number) => `${number(value, 1)} mm`;
  const o = f.options;
  const held = named(heldDigits(f.block), speech);
  return [
    w.step.measure,
    // The best measurement of the path is the path.
    f.asked.paperReading === 'none' ? w.step.paper : w.step.paperDone(number(f.asked.paperReading, 1)),
    w.step.cut(mm(o.thickness)),
    w.step.heat,
    w.step.blot,
    w.step.drape(held, number(o.differential, 1), w.motion[motion(f)], way(f, speech)),
    seamStep(f, speech),
    w.step.cool,
    w.step.check,
    w.step.trim,
  ];
}

/** How the ends are closed, on what sheet they bond, and what closing them longer or shorter than drawn does. */
function seamStep(f: StripFigures, speech: Speech): string {
  const { strip: w, number } = speech;
  const o = f.options;
  // Where the band closes on a ramp, closing it longer or shorter shifts the edges of the two ends against each other.
  const slope = Math.abs(f.seamSlope);
  return w.step.seam(
    w.step[o.seam](`${number(o.seamAllowance, 1)} mm`),
    slope < 0.05 ? '' : w.step.shift(number(slope, 1)),
    o.closure === 'tacked' ? w.step.tack(named(heldDigits(f.block), speech)) : w.step.spanning,
  );
}

function checks(f: StripFigures, hand: Hand, speech: Speech): readonly string[] {
  const { strip: w, hand: names, number } = speech;
  const free = (Object.entries(f.freePip) as [DigitName, number][]).map(([digit, angle]) => `${names.short[digit]} ${number(angle, 0)}`);
  const target = hand.target?.digit ?? null;
  const blanks = placedDigits(f.block)
    .map(({ digit }) => `${names.short[digit]} ......`)
    .join(' ');
  const { check } = w;
  return [
    check.bars,
    check.pencil,
    check.mp(named(heldDigits(f.block), speech), w.motion[motion(f)], number(f.options.differential, 1)),
    check.flexion(free.join(', '), blanks),
    check.extension(blanks),
    ...(target ? [check.active(names.finger[target])] : []),
    check.clear,
    check.onAndOff,
    check.edges,
    check.skin,
  ];
}
