import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import packageJson from '../package.json' with { type: 'json' };

const text = (name: string) => readFileSync(new URL(`../${name}`, import.meta.url), 'utf8');
const names = [...Object.keys(packageJson.dependencies), ...Object.keys(packageJson.devDependencies)];
const lock: { readonly packages: Readonly<Record<string, { readonly resolved?: string; readonly integrity?: string }>> } = JSON.parse(
  text('package-lock.json'),
);

/** First column of the table of dependencies: names, `@types/*` for a whole family. */
const explained = [...text('DEVELOPERS.md').matchAll(/^\| ([^|]+) \| ([^|]+) \|$/gm)].flatMap(([, first = '', why = '']) =>
  why.trim().length > 5 ? first.split(',').map((name) => name.trim()) : [],
);

describe('every dependency', () => {
  it.each(names)('%s has a reason in DEVELOPERS.md', (name) => {
    expect(explained.some((entry) => entry === name || (entry.endsWith('/*') && name.startsWith(entry.slice(0, -1))))).toBe(true);
  });

  it.each(names)('%s is pinned to one version', (name) => {
    const versions: Readonly<Record<string, string>> = { ...packageJson.dependencies, ...packageJson.devDependencies };
    expect(versions[name]).toMatch(/^\d+\.\d+\.\d+$/);
  });
});

describe('the lockfile', () => {
  const packages = Object.entries(lock.packages).filter(([path]) => path !== '');

  it('has a checksum for every package and names no registry', () => {
    expect(packages.length).toBeGreaterThan(50);
    for (const [path, entry] of packages) {
      expect(entry.integrity, path).toMatch(/^sha512-/);
      expect(entry.resolved, path).toBeUndefined();
    }
  });
});
