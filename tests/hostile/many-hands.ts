import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PROGRESS_NAME } from '../../src/cli/batch-progress.ts';
import { DIGITS } from '../../src/hand/digits.ts';
import { normHands } from '../../src/hand/norm-hands.ts';
import { seeded, seededNormal } from '../../src/units/chance.ts';

/** What a batch of a very large table took, how it was stopped, and what came of going on. */
export interface ManyHands {
  readonly hands: number;
  readonly made: number;
  readonly wrongRows: number;
  /** The whole batch in one go; seconds are of the processor. */
  readonly whole: { readonly seconds: number; readonly megabytes: number };
  /** Lines of progress that a terminal was shown before Ctrl-C, and how the command ended, as a shell shows it. */
  readonly shown: number;
  readonly stoppedWith: number | null;
  /** Hidden files that were left. */
  readonly left: number;
  /** The second run: rows that it took over and made, and what it used. */
  readonly again: { readonly reused: number; readonly made: number; readonly seconds: number; readonly megabytes: number };
  /** Whether all lists are those of the batch in one go, byte for byte. */
  readonly same: boolean;
}

const FIELDS = ['width', 'circumference', 'palmarRoom', 'dorsalLength'] as const;
const LISTS = ['cut-list.csv', 'cut-list.json', 'row-errors.csv'];
/** Every so many rows one that is wrong. */
const WRONG_EVERY = 1000;
/** Of a batch of 100,000 hands on a machine that does much else, s. */
const MOST_SECONDS = '7200';

/** A table of invented hands, drawn from published means and spreads. */
function tableOf(count: number): string {
  const header = ['code', 'side', ...DIGITS.flatMap((digit) => FIELDS.map((field) => `${digit}.${field}`))].join(',');
  const rows = normHands('mixed', count, seededNormal(seeded(9))).hands.map(({ hand }, k) => {
    const lengths = DIGITS.flatMap((digit) =>
      FIELDS.map((field) => {
        const isWrong = k % WRONG_EVERY === WRONG_EVERY - 1 && digit === 'ring' && field === 'width';
        return isWrong ? '-1' : (hand.digits[digit]?.[field] ?? Number.NaN).toFixed(1);
      }),
    );
    return [`B-${k + 1}`, k % 2 ? 'left' : 'right', ...lengths].join(',');
  });
  return `${[header, ...rows].join('\n')}\n`;
}

/** Makes a batch of so many hands in one go, stops another one in its middle by Ctrl-C at a terminal, and has it go on. */
export async function triedManyHands(hands: number, scratch: string, root: string): Promise<ManyHands> {
  const table = join(scratch, 'hands.csv');
  writeFileSync(table, tableOf(hands));
  const words = (folder: string) => [
    process.execPath,
    join(root, 'dist', 'knucklewright.js'),
    ...['batch', table, '--block', 'ring-lowered-in-four', '--files', 'none', '--out', folder],
  ];
  const measured = (folder: string) => {
    const { stdout, stderr } = spawnSync('/usr/bin/python3', [join(root, 'tests', 'readers', 'measure.py'), ...words(folder), '--json'], {
      encoding: 'utf8',
      maxBuffer: 64e6,
      env: { ...process.env, MEASURED_SECONDS: MOST_SECONDS },
    });
    if (stdout === '') throw new Error(stderr);
    const { seconds, megabytes, out } = JSON.parse(stdout);
    return { ...(JSON.parse(out) as { made: number; reused: number; wrongRows: number }), seconds, megabytes };
  };
  const [one, two] = [join(scratch, 'whole'), join(scratch, 'stopped')];
  const whole = measured(one);
  mkdirSync(two);
  const half = statSync(join(one, PROGRESS_NAME)).size / 2;
  const { shown, code } = await stoppedAtTerminal(words(two), () => sizeOf(join(two, PROGRESS_NAME)) > half);
  const left = readdirSync(two).filter((name) => name.startsWith('.')).length;
  const again = measured(two);
  return {
    hands,
    made: whole.made,
    wrongRows: whole.wrongRows,
    whole: { seconds: whole.seconds, megabytes: whole.megabytes },
    shown,
    stoppedWith: code,
    left,
    again: { reused: again.reused, made: again.made, seconds: again.seconds, megabytes: again.megabytes },
    same: LISTS.every((name) => readFileSync(join(one, name)).equals(readFileSync(join(two, name)))),
  };
}

function sizeOf(path: string): number {
  try {
    return statSync(path).size;
  } catch {
    return 0;
  }
}

/** Runs the words at a terminal of their own and types Ctrl-C when it is time. */
function stoppedAtTerminal(words: readonly string[], isTime: () => boolean): Promise<{ shown: number; code: number | null }> {
  const line = words.map((word) => `'${word}'`).join(' ');
  const terminal = spawn('script', ['-qefc', line, '/dev/null'], { stdio: ['pipe', 'pipe', 'inherit'] });
  let shown = 0;
  terminal.stdout.setEncoding('utf8').on('data', (text: string) => {
    shown += text.match(/hands done/g)?.length ?? 0;
  });
  const watch = setInterval(() => {
    if (!isTime()) return;
    clearInterval(watch);
    terminal.stdin.write('\x03');
  }, 50);
  return new Promise((done) =>
    terminal.on('close', (code) => {
      clearInterval(watch);
      done({ shown, code });
    }),
  );
}
