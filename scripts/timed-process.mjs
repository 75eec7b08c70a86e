import { spawnSync } from 'node:child_process';

/** Prints the most memory that a process held, when it ends, to its standard error; bytes. */
export const MEMORY =
  'data:text/javascript,process.on("exit",()=>process.stderr.write("\\nmemory "+1024*process.resourceUsage().maxRSS+"\\n"))';

/** Runs Node with these words: its wall and processor time in seconds, its memory where it prints that, and what it printed. Throws where it fails. */
export function timedProcess(words) {
  const from = performance.now();
  const ran = spawnSync('bash', ['-c', 'TIMEFORMAT="%U %S"; time "$@"', 'bash', process.execPath, ...words], {
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  if (ran.status !== 0) throw new Error(ran.stderr.slice(0, 500));
  const seconds = (performance.now() - from) / 1000;
  const [user = 0, system = 0] = ran.stderr.trimEnd().split('\n').at(-1).split(' ').map(Number);
  const megabytes = Number(/^memory (\d+)$/m.exec(ran.stderr)?.[1]) / 1e6;
  return { seconds, cpuSeconds: user + system, megabytes, stdout: ran.stdout };
}

/** A table of invented hands, as `batch` reads it. Little fingers are given the palmar room that a strip needs, so that every row is made and none is cheap. */
export function handTable(hands) {
  const fields = ['width', 'circumference', 'palmarRoom', 'dorsalLength'];
  const digits = ['index', 'long', 'ring', 'little'];
  const header = ['code', 'side', ...digits.flatMap((d) => fields.map((f) => `${d}.${f}`))].join(',');
  const measure = (hand, digit, field) => {
    const mm = hand.digits[digit][field];
    return digit === 'little' && field === 'palmarRoom' ? Math.max(16, mm) : mm;
  };
  const lengths = (hand) => digits.flatMap((d) => fields.map((f) => measure(hand, d, f).toFixed(1)));
  const lines = hands.map(({ hand }, i) => [`B-${i + 1}`, i % 2 ? 'left' : 'right', ...lengths(hand)].join(','));
  return `${[header, ...lines].join('\n')}\n`;
}
