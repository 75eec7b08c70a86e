// Writes docs/accuracy.md from runs: comparisons and what the model leaves out (tests/figures), and what real readers measure in the files.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bundleTests, load, root } from './bundle-tests.mjs';
import { librecadScale, readerSizes } from './reader-sizes.mjs';

const figures = await load(await bundleTests('tests/figures/figures.ts'), 'figures');
const scratch = mkdtempSync(join(tmpdir(), 'accuracy-'));
const tables = (await figures.sampleFiles()).map((sample) => {
  console.log(`readers of ${sample.title}`);
  return `${sample.title.charAt(0).toUpperCase()}${sample.title.slice(1)}:

| format | reader | of what | true | measured | apart by | can tell |
| --- | --- | --- | --- | --- | --- | --- |
${readerSizes(sample, figures, scratch).map(row).join('\n')}
`;
});
const scale = librecadScale(scratch);
rmSync(scratch, { recursive: true });

writeFileSync(
  join(root, 'docs/accuracy.md'),
  `# How exact it is

Written by \`node scripts/accuracy.mjs\` from runs, never by hand; a test compares the first two parts with a run of today.

${figures.accuracyText()}
${figures.freeFlexionShares()}
## What real readers measure

Sizes in mm, width x height, as other programs read our files. A reader that draws gives the size of the ink less the line's own width; of one
that prints into a PDF, mutool tells where the lines of that PDF lie.
${scale ? `LibreCAD prints everything a little short: it made ${scale.map((s) => (1000 * s).toFixed(2)).join(' and ')} mm of two bare lines of 1000 mm, which none of our code has written. Its\nsizes stand divided by that.\n` : ''}
${tables.join('\n')}`,
);
console.log('docs/accuracy.md written');

function row({ format, reader, what, truth, found, fineness }) {
  const name = `| ${format} | ${reader} | ${what} | ${size(truth)}`;
  if (found === null) return `${name} | not there on this machine | | ${fineness} |`;
  const apart = Math.max(...found.map((mm, k) => Math.abs(mm - truth[k])));
  return `${name} | ${size(found)} | ${apart.toFixed(4)} | ${fineness} |`;
}

function size(mm) {
  return mm.map((side) => side.toFixed(4)).join(' x ');
}
