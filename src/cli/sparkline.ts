const BLOCKS = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'] as const;

/** Full scale of the sparkline, degrees: a healthy PIP joint (normal flexion of the worked cases of total active motion). */
const FULL = 110;

/** One block a value, on a fixed scale from 0 to `full`, so that a change within the measuring error stays a small one. */
export function sparkline(values: readonly number[], full: number = FULL): string {
  return values
    .map((value) => BLOCKS[Math.max(0, Math.min(BLOCKS.length - 1, Math.floor((value / full) * BLOCKS.length)))] ?? BLOCKS[0])
    .join('');
}
