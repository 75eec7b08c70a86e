import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { outputFileName, saveFiles } from '../../src/files/save-file.ts';
import { anyCharacters, HOSTILE_TEXTS } from './hostile.ts';
import { hold, readable } from './must-hold.ts';
import { type Target, target } from './target.ts';

const PLAIN_NAME = /^[A-Za-z0-9][A-Za-z0-9_-]*(\.[A-Za-z0-9]+)+$/;
const CANARY = 'not to be touched';

const anyName = fc.oneof(
  fc.constantFrom(...HOSTILE_TEXTS),
  fc.constantFrom(
    'a_mm.svg',
    'A_mm.svg',
    'b_mm.dxf',
    'link.svg',
    'dangling.svg',
    'folder.svg',
    'a_mm.svg/',
    './a.svg',
    'a..svg',
    '..',
    '.',
    '',
  ),
  anyCharacters(30),
);

interface SaveRecipe {
  readonly names: readonly string[];
  readonly made: readonly string[];
  readonly force: boolean;
}

const saveRecipes: fc.Arbitrary<SaveRecipe> = fc.record({
  names: fc.array(anyName, { maxLength: 3 }),
  made: fc.array(anyName, { maxLength: 2 }),
  force: fc.boolean(),
});

// Nothing is left to a disk's speed where the memory can stand in for one.
const place = mkdtempSync(join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'saving-'));
process.on('exit', () => rmSync(place, { recursive: true, force: true }));
const folder = join(place, 'out');
const canary = join(place, 'canary.txt');

/** A folder with a file, links to a file and to nothing outside of it, and a folder with a file's name. */
function freshFolder(): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(join(folder, 'folder.svg'), { recursive: true });
  writeFileSync(canary, CANARY);
  symlinkSync(canary, join(folder, 'link.svg'));
  symlinkSync(join(place, 'made-through-a-link'), join(folder, 'dangling.svg'));
}

/** The target of file names and of the folder they are saved into. */
export const SAVING_TARGETS: readonly Target[] = [
  target<SaveRecipe>({
    name: 'file names',
    holds: 'whatever a file is to be called, only plain names appear, whole, in the given folder, and nothing outside of it is touched',
    recipes: saveRecipes,
    async feed({ names, made, force }) {
      freshFolder();
      const safe = made.map((text) => outputFileName(text, 'svg'));
      for (const name of safe) hold(PLAIN_NAME.test(name) && name.endsWith('_mm.svg') && name.length < 100, () => `made name ${name}`);
      const files = [...names, ...safe].map((name, k) => ({ name, content: `content ${k} of the whole` }));
      const before = readdirSync(folder).sort();
      const saved = readable(await saveFiles(folder, files, { force }), JSON.stringify(names));
      const after = readdirSync(folder).sort();
      if (saved === null) hold(JSON.stringify(after) === JSON.stringify(before), () => `refused, yet ${after.join(', ')}`);
      else
        for (const [k, file] of files.entries())
          hold(readFileSync(join(folder, file.name), 'utf8') === `content ${k} of the whole`, () => file.name);
      for (const name of after) hold(PLAIN_NAME.test(name), () => `a file ${JSON.stringify(name)}`);
      hold(readdirSync(place).sort().join() === 'canary.txt,out', () => `outside: ${readdirSync(place).join(', ')}`);
      hold(readFileSync(canary, 'utf8') === CANARY, () => 'a file was written through a link');
      hold(statSync(join(folder, 'folder.svg')).isDirectory(), () => 'a folder was replaced');
    },
  }),
];
