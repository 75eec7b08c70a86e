import { type Jobs, serveReading } from '../../src/cli/bounded/serve-reading.ts';

/** A reading process whose jobs never end by themselves, to be killed; and two that do. */
const JOBS: Jobs = {
  inspect: async () => {
    for (;;);
  },
  cutList: async (path: string) => {
    const held: unknown[] = [];
    for (let k = 0; ; k++) if (k < 120) held.push(path === 'heap' ? new Array(1_000_000).fill(k / 3) : Buffer.alloc(10_000_000, 1));
  },
  ownDrawing: async (path: string) => {
    throw new Error(`a fault at ${path}`);
  },
  drawingOrHand: async (path: string) => ({ ok: true, value: [path, process.pid], warnings: [] }),
};

/** Less than any file is given, so that the tests are quick. Seconds of the processor */
const SECONDS = 0.6;
const FOR_MEMORY = 30;

serveReading(JOBS, new URL(import.meta.url), () => (process.env.SLOWLY ? FOR_MEMORY : SECONDS));
