// Draws the demo hand's strip and turns it into the README's picture, with strokes wide enough for a screen.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';

const out = mkdtempSync(join(tmpdir(), 'picture-'));
execFileSync(process.execPath, ['dist/knucklewright.js', 'draw', 'fixtures/demo-hand.json', '--formats', 'svg', '--out', out], {
  stdio: ['ignore', 'ignore', 'inherit'],
});
const [name] = readdirSync(out);
const svg = readFileSync(join(out, name), 'utf8').replaceAll('stroke-width="0.1"', 'stroke-width="0.22"');
rmSync(out, { recursive: true });
const picture = new Resvg(svg, { fitTo: { mode: 'width', value: 1500 }, background: '#ffffff', font: { loadSystemFonts: false } }).render();
writeFileSync('docs/demo-strip.png', picture.asPng());
