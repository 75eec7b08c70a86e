import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { COMMANDS, FAMILIES } from './commands.ts';

const DOCUMENTS = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync('docs')
    .filter((name) => name.endsWith('.md'))
    .map((name) => `docs/${name}`),
];
/** A command line as it stands in a block of code or between backticks. */
const TYPED = /(?:^|`)(?:knucklewright|node dist\/knucklewright\.js) ([^`\n]+)/gm;
/** Flags of the program itself. */
const OF_PROGRAM = ['--help', '--version', '--json'];

describe('command lines in the documents', () => {
  const lines = DOCUMENTS.flatMap((document) =>
    [...readFileSync(document, 'utf8').matchAll(TYPED)].map(([, typed = '']) => ({ document, typed })),
  );

  it('are found', () => expect(lines.length).toBeGreaterThan(30));

  it('name every command there is, in docs/commands.md', () => {
    const typed = lines.filter(({ document }) => document === 'docs/commands.md').map((line) => `${line.typed} `);
    expect(Object.keys(COMMANDS).filter((name) => !typed.some((line) => line.startsWith(`${name} `)))).toEqual([]);
  });

  it('name commands that there are, with flags that they have', async () => {
    const wrong = [];
    for (const { document, typed } of lines) {
      const [first = '', second = ''] = typed.split(/\s+/);
      const name = first in FAMILIES ? `${first} ${second.split('|')[0]}` : first;
      const flags = typed.match(/(?<=\s|^)--[a-z][a-z-]*/g) ?? [];
      if (first.startsWith('--')) {
        wrong.push(...flags.filter((flag) => !OF_PROGRAM.includes(flag)).map((flag) => `${document}: ${flag}`));
        continue;
      }
      const command = await COMMANDS[name]?.();
      if (command === undefined) wrong.push(`${document}: ${typed}`);
      else
        wrong.push(
          ...flags.filter((flag) => !command.flags.some(({ long }) => long === flag)).map((flag) => `${document}: ${name} ${flag}`),
        );
    }
    expect(wrong).toEqual([]);
  });
});
