import { plain } from '../../src/units/number.ts';
import { measuringBand, NEGLECT_BLOCKS, type Neglected, neglected } from './neglected.ts';
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
  const left = neglected();
  const rows = left.map((n) => `| ${n.what} | ${n.assumption} | ${n.change.map(signed).join(' | ')} | ${n.how} |`);
  const { half, trim } = measuringBand();
  const tooShort = NEGLECT_BLOCKS.map((_, b) => together(left, b, 1, half[b] ?? 0));
  const tooLong = NEGLECT_BLOCKS.map((_, b) => together(left, b, -1, half[b] ?? 0));
  const cells = (list: readonly number[]) => list.map((mm) => plain(mm, 1)).join(' | ');
  return `## Against the outside

Our value, the value that stands outside, and how far they lie apart. The outside values are typed into \`tests/figures/outside-checks.ts\` from
the source that is named, or computed by the library that is named.

| what | ours | outside | apart by | unit | source |
| --- | --- | --- | --- | --- | --- |
${checks.join('\n')}

## What the model leaves out, and how large that could be

The path's length on the demo hand (invented), changed by one thing at a time; + means that the strip would have to be longer. The sizes of
these things are assumptions, marked so; the changes are computed from them (\`tests/figures/neglected.ts\`).

| left out | assumed | ${NEGLECT_BLOCKS.map((id) => `${id}, mm`).join(' | ')} | how it is computed |
| --- | --- | ${NEGLECT_BLOCKS.map(() => '---').join(' | ')} | --- |
${rows.join('\n')}

| together, the larger size of each, as independent errors (root of the sum of squares) | ${NEGLECT_BLOCKS.join(' | ')} |
| --- | ${NEGLECT_BLOCKS.map(() => '---').join(' | ')} |
| errors of measuring, half of the 95 % band, mm | ${cells(half)} |
| what makes the strip too short (+), and the errors of measuring, mm | ${cells(tooShort)} |
| what makes the strip too long (-), and the errors of measuring, mm | ${cells(tooLong)} |
| trim at the finishing end, mm | ${cells(half.map(() => trim))} |

**What to expect of the trim.** ${verdict(Math.max(...tooShort), trim)} What makes the strip too long costs no strip: up to
${plain(Math.max(...tooLong), 1)} mm more than the trim is cut off. Where a row of fingers is high in the middle or a web far back, ask for more trim
(\`--trim\`), and drape before cutting the finishing end.
`;
}

/** What drives the length one way (sign), with the errors of measuring, mm; of each kind the larger size. */
function together(left: readonly Neglected[], block: number, sign: 1 | -1, measuring: number): number {
  const kinds = [...new Set(left.map((n) => n.what))];
  const largest = (kind: string) => Math.max(0, ...left.filter((n) => n.what === kind).map((n) => sign * (n.change[block] ?? 0)));
  return Math.hypot(measuring, ...kinds.map(largest));
}

function verdict(worst: number, trim: number): string {
  const reach = `what makes the strip too short, with the errors of measuring, could reach ${plain(worst, 1)} mm`;
  return worst <= trim
    ? `On this hand, ${reach}: the trim of ${plain(trim, 1)} mm covers it.`
    : `On this hand, ${reach}, more than the trim of ${plain(trim, 1)} mm: where all of it comes together the strip is too short and must be cut anew, with more trim.`;
}
