import { readingBand } from '../../src/pattern/strip/length-band.ts';
import { MM_PER } from '../../src/units/length.ts';
import { plain } from '../../src/units/number.ts';
import { type ModelOmission, measuringBand, modelOmissions, OMISSION_BLOCKS } from './model-omissions.ts';
import { outsideChecks } from './outside-checks.ts';

/** Differences under this are rounding of numbers in the machine, and differ between machines. */
const ROUNDING = 1e-8;

/** The part of docs/accuracy.md that comes out the same on every machine. */
export function accuracyText(): string {
  const checks = outsideChecks().map(({ what, ours, outside, decimals, unit, source }) => {
    const difference = Math.abs(ours - outside);
    const shown = difference < ROUNDING ? 'under 0.00000001' : difference.toFixed(8).replace(/(\.\d*?[1-9]{1,2})\d*$/, '$1');
    return `| ${what} | ${ours.toFixed(decimals)} | ${outside.toFixed(decimals)} | ${shown} | ${unit} | ${source} |`;
  });
  const signed = (mm: number) => `${mm < 0 ? '-' : '+'}${plain(Math.abs(mm), 1)}`;
  const left = modelOmissions();
  const rows = left.map((n) => `| ${n.what} | ${n.assumption} | ${n.change.map(signed).join(' | ')} | ${n.how} |`);
  const { longer, shorter, trim } = measuringBand();
  const tooShort = OMISSION_BLOCKS.map((_, b) => [longer[b] ?? 0, ...largestOfEach(left, b, 1)]);
  const tooLong = OMISSION_BLOCKS.map((_, b) => [shorter[b] ?? 0, ...largestOfEach(left, b, -1)]);
  const cells = (list: readonly number[]) => list.map((mm) => plain(mm, 1)).join(' | ');
  const independent = (list: readonly (readonly number[])[]) => list.map((parts) => Math.hypot(...parts));
  const atOnce = (list: readonly (readonly number[])[]) => list.map((parts) => parts.reduce((sum, mm) => sum + mm, 0));
  return `## Against the outside

Our value, the value that stands outside, and how far they lie apart. The outside values are typed into \`tests/figures/outside-checks.ts\` from
the source that is named, or computed by the library that is named.

| what | ours | outside | apart by | unit | source |
| --- | --- | --- | --- | --- | --- |
${checks.join('\n')}

## What is modelled now, and what is not

The strip's edges follow the webs (docs/model.md rule 11), its length the true sections of the fingers, and free PIP flexion has a finger in it (rule 12, about 8 degrees
either way by how far flesh gives). Fingers whose roots were measured may taper (rule 18): the strip is then curved for them. **A paper trial (rule 15) takes most of the table below away**: with a reading the length is as sure as the reading, a standard
deviation of 1 mm, so 2 mm either way; what then remains is that sheet is not paper (thinning, and skin pressed while it is warm).

## What the model leaves out, and how large that could be

The path's length on the demo hand (invented), changed by one thing at a time; + means that the strip would have to be longer. The sizes of
these things are assumptions, marked so; the changes are computed from them (\`tests/figures/model-omissions.ts\`).

| left out | assumed | ${OMISSION_BLOCKS.map((id) => `${id}, mm`).join(' | ')} | how it is computed |
| --- | --- | ${OMISSION_BLOCKS.map(() => '---').join(' | ')} | --- |
${rows.join('\n')}

| together, of each the larger size, mm | ${OMISSION_BLOCKS.join(' | ')} |
| --- | ${OMISSION_BLOCKS.map(() => '---').join(' | ')} |
| errors of measuring, 95 % band, toward a longer strip | ${cells(longer)} |
| errors of measuring, 95 % band, toward a shorter strip | ${cells(shorter)} |
| the strip is too short by, with the errors of measuring, all independent of each other (root of the sum of squares) | ${cells(independent(tooShort))} |
| the same, if all came at once and at their largest (plain sum) | ${cells(atOnce(tooShort))} |
| the strip is too long by, all independent of each other | ${cells(independent(tooLong))} |
| the same, if all came at once and at their largest | ${cells(atOnce(tooLong))} |
| with a paper trial, the reading's own 95 % band, either way | ${cells(OMISSION_BLOCKS.map(() => readingBand().above))} |
| trim at the finishing end by default | ${cells(OMISSION_BLOCKS.map(() => trim))} |

${trimText({ likely: Math.max(...independent(tooShort)), worst: Math.max(...atOnce(tooShort)), long: Math.max(...independent(tooLong)), trim })}
`;
}

/** What drives the length one way (sign), mm: of each kind the larger size. */
function largestOfEach(left: readonly ModelOmission[], block: number, sign: 1 | -1): readonly number[] {
  const kinds = [...new Set(left.map((n) => n.what))];
  return kinds.map((kind) => Math.max(0, ...left.filter((n) => n.what === kind).map((n) => sign * (n.change[block] ?? 0))));
}

interface TrimFigures {
  /** By how much the strip may be too short, mm: independent errors, and all at once. */
  readonly likely: number;
  readonly worst: number;
  /** By how much it may be too long, mm. */
  readonly long: number;
  readonly trim: number;
}

/** What a therapist is to expect of the trim, and to do; both units, whole millimetres upward where a trim is to be chosen. */
function trimText({ likely, worst, long, trim }: TrimFigures): string {
  const both = (mm: number, decimals = 1) => `${plain(mm, decimals)} mm (${plain(mm / MM_PER.in, 2)} in)`;
  const [enough, safe] = [Math.ceil(likely), Math.ceil(worst)];
  const reach = `On this hand the strip may come out up to ${both(likely)} too short where these things and the errors of measuring are independent of each other, and up to ${both(worst)} if all of them came at once and at their largest.`;
  const covered =
    likely <= trim
      ? `The default trim of ${both(trim)} covers the first; it is`
      : `**The default trim of ${both(trim)} does not cover that**: it is ${both(likely - trim)} short of the first`;
  return `**What to expect of the trim.** ${reach} ${covered} ${likely <= trim ? '' : 'and '}${both(worst - trim)} short of the second.

What to do:

- Choose a larger trim: \`--trim ${enough}\` (${plain(Math.ceil((100 * enough) / MM_PER.in) / 100, 2)} in) covers independent errors on a hand like this one,
  \`--trim ${safe}\` (${plain(Math.ceil((100 * safe) / MM_PER.in) / 100, 2)} in) everything in the table at once. On the page it is the field for the trim among the options.
  Do so above all where the row of fingers is high in the middle, or where fingers taper much whose roots were not measured.
- Better: make the paper trial (\`draw --paper-trial\`, then \`--paper-reading\`), which measures all of this on the person's own hand.
- Or cut the finishing end longer than drawn by as much, ${both(Math.max(0, enough - trim), 0)} to ${both(Math.max(0, safe - trim), 0)}.
- Drape before the finishing end is cut. A strip that is too short cannot be made longer; cut it anew, with more trim.
- What makes the strip too long costs no strip: up to ${both(long)} more than the trim is cut off.`;
}
