import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import packageJson from '../package.json' with { type: 'json' };
// @ts-expect-error a script without types of its own
import { INSIDE } from '../scripts/third-parties/inside-packages.mjs';
// @ts-expect-error a script without types of its own
import { bomOf, thirdParties } from '../scripts/third-parties/third-parties.mjs';

interface Party {
  readonly name: string;
  readonly version: string;
  readonly copyright: string | null;
  readonly text: string;
  readonly within?: string;
  readonly seen?: readonly [file: string, sign: string] | null;
}

const ROOT = fileURLToPath(new URL('..', import.meta.url));
const built = (name: string) => readFileSync(join(ROOT, 'dist', name), 'utf8');
const inside = INSIDE as readonly Party[];

describe('what is said of the work of others', () => {
  it('names each package that runs with the command, and what stands inside it', () => {
    const notices = built('THIRD-PARTY-NOTICES.txt');
    // Types alone, or bundled under the name of what it belongs to, is none of them: all of these have code in what is built.
    for (const name of Object.keys(packageJson.dependencies)) expect(notices, name).toMatch(new RegExp(`^${name} \\d`, 'm'));
    for (const { name, copyright } of inside) {
      expect(notices).toContain(`${name} `);
      expect(notices, name).toContain(copyright);
    }
    expect(notices).not.toContain('vitest');
  });

  it('stands in the page, of what is in the page', () => {
    const notices = /<template id="notices">([\s\S]*?)<\/template>/.exec(built('knucklewright.html'))?.[1] ?? '';
    for (const name of ['preact', 'pdfkit', 'zod', 'core-js-pure', 'Font metrics of Helvetica']) expect(notices).toContain(`\n${name} `);
    expect(notices).toContain('Permission is hereby granted');
    for (const name of ['commander', 'highs', 'METIS']) expect(notices).not.toContain(`\n${name} `);
  });

  it.each(inside.flatMap(({ name, seen }) => (seen ? [[name, seen] as const] : [])))(
    'is true of what was installed: %s',
    (_, [file, sign]) => {
      expect(readFileSync(join(ROOT, 'node_modules', file)).includes(sign)).toBe(true);
    },
  );

  it('misses nothing that a package says it has copied in', () => {
    const named = new Set(inside.map(({ name }) => name));
    for (const file of [
      '@svgdotjs/svg.js/dist/svg.esm.js',
      'pdfkit/js/pdfkit.browser.mjs',
      'dxf-writer/src/Drawing.js',
      'sax/lib/sax.js',
    ]) {
      const text = readFileSync(join(ROOT, 'node_modules', file), 'utf8');
      const copied = [...text.matchAll(/node_modules\/(?:\.pnpm\/)?((?:@[\w.-]+[+/])?[\w.-]+)@\d/g)].map(([, name = '']) => name);
      expect(
        copied.filter((name) => !named.has(name)),
        file,
      ).toEqual([]);
    }
  });

  it('refuses a licence that nobody looked at, and a package that carries none', () => {
    const folder = mkdtempSync(join(tmpdir(), 'parties-'));
    const installed = join(folder, 'node_modules', 'bad');
    mkdirSync(installed, { recursive: true });
    writeFileSync(join(installed, 'package.json'), JSON.stringify({ name: 'bad', version: '1.0.0', license: 'Own-1.0' }));
    expect(() => thirdParties([join(installed, 'index.js')])).toThrow('bad carries no licence text');
    writeFileSync(join(installed, 'LICENSE'), 'All rights reserved.');
    expect(() => thirdParties([join(installed, 'index.js')])).toThrow('licences to look at: bad (Own-1.0)');
    rmSync(folder, { recursive: true });
  });
});

describe('the list of materials', () => {
  it('is CycloneDX with an identity that follows from what it lists, and no time of its own', () => {
    const bom = JSON.parse(built('sbom.json'));
    expect(bom).toMatchObject({ bomFormat: 'CycloneDX', specVersion: '1.5', version: 1 });
    expect(bom.serialNumber).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-8[0-9a-f]{3}-[0-9a-f]{12}$/);
    const names = bom.components.map(({ name }: Party) => name);
    for (const name of Object.keys(packageJson.dependencies)) expect(names).toContain(name);
    expect(names).not.toContain('vitest');
    const one = { name: 'a', version: '1', licence: 'MIT', source: '', text: '' };
    expect(bomOf([one], '1.0.0')).toEqual(bomOf([one], '1.0.0'));
    expect(bomOf([one], '1.0.0').serialNumber).not.toBe(bomOf([{ ...one, version: '2' }], '1.0.0').serialNumber);
  });
});
