import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { FINDING_KINDS } from '../src/inspect/finding-kinds.ts';
import { inspectFile } from '../src/inspect/inspect-file.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
/** Made by scripts/foreign-drawings.mjs; by night, those that it has just made. */
const FOLDER = join(ROOT, process.env.KNUCKLEWRIGHT_FOREIGN ?? 'fixtures/foreign');
const sizes: Readonly<Record<string, { readonly by: string; readonly width: number; readonly height: number }>> = JSON.parse(
  readFileSync(join(FOLDER, 'sizes.json'), 'utf8'),
);
/** Those that state no unit, so that their size is anybody's guess. */
const WITHOUT_UNIT = /^(ezdxf-r12|openscad\.dxf)/;
/** Inkscape answers with six digits of px, a PDF writes as many of pt. mm */
const TOLERANCE = 0.005;

describe('inspect reads drawings of other programs', () => {
  it('of five kinds', () => {
    expect(Object.keys(sizes).length).toBeGreaterThanOrEqual(12);
  });

  it.each(Object.entries(sizes))('%s at the size that its program states', (name, { width, height }) => {
    const found = inspectFile(readFileSync(join(FOLDER, name)));
    expect(Math.abs((found.size?.width ?? 0) - width)).toBeLessThan(TOLERANCE);
    expect(Math.abs((found.size?.height ?? 0) - height)).toBeLessThan(TOLERANCE);
    const stops = found.findings.filter(({ severity }) => severity === 'stop').map(({ code }) => code);
    expect(stops).toEqual(WITHOUT_UNIT.test(name) ? [201] : []);
  });
});

describe('inspect reads OpenSCAD', () => {
  const FOUND = { svg: [308, 401, 409], dxf: [201, 307, 308, 401, 409] } as const;
  it.each(['svg', 'dxf'] as const)(
    '%s: an arc of short lines, no layers, a hole after its outline; DXF also no unit, loose lines',
    (format) => {
      const found = inspectFile(readFileSync(join(FOLDER, `openscad.${format}`)));
      expect([...new Set(found.findings.map(({ code }) => code))]).toEqual(FOUND[format]);
      expect([found.parts.length, found.parts[0]?.holes]).toEqual([1, 1]);
      expect(found.parts[0]?.width).toBeCloseTo(80, 4);
      expect(found.parts[0]?.height).toBeCloseTo(20, 4);
      // A hole of radius 3 as a regular polygon of 48 sides: perimeter 2 n r sin(pi / n).
      expect(found.cutLength).toBeCloseTo(200 + 2 * 48 * 3 * Math.sin(Math.PI / 48), 2);
    },
  );
});

it('docs/inspect.md lists every finding as the program judges it', () => {
  const rows = [...readFileSync(join(ROOT, 'docs/inspect.md'), 'utf8').matchAll(/^\| (\d{3}) \| (\w+) \| ([^|]+) \| ([^|]+) \|$/gm)];
  const listed = Object.fromEntries(
    rows.map(([, code, severity, what, why]) => [code, { severity, what: what?.trim(), why: why?.trim() }]),
  );
  expect(listed).toEqual(FINDING_KINDS);
});
