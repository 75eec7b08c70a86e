import { plain } from '../../units/number.ts';
import { BAR } from './scale-check.ts';
import type { PrintedBars } from './sheet-settings.ts';

/** Largest error of a bar that is let pass: 0.5 %, 1 mm on a strip of 200 mm. */
export const LARGEST_PRINT_ERROR = 0.005;
/**
 * Largest error that a corrected file may make up for. It covers A4 fitted to Letter (6 %) and the reverse (2.7 %) with the fitted
 * margins of common printers; beyond it the print was fitted to something else, and the setting is to be found, not corrected.
 */
export const LARGEST_CORRECTION = 0.1;

export type PrintVerdict = 'pass' | 'compensate' | 'reprint';

export interface PrintScaleCheck {
  readonly verdict: PrintVerdict;
  /** Error of each bar as a fraction; 0.01 is 1 % too long. */
  readonly errors: PrintedBars;
  /** What the file is to be multiplied by, each axis. */
  readonly factors: PrintedBars;
  /** One sentence on what to do. */
  readonly advice: string;
}

/** What the two bars of a print say of it; lengths in mm, above 0. */
export function checkPrintScale(bars: PrintedBars): PrintScaleCheck {
  const errors = { across: bars.across / BAR - 1, along: bars.along / BAR - 1 };
  const factors = { across: BAR / bars.across, along: BAR / bars.along };
  const worst = Math.max(Math.abs(errors.across), Math.abs(errors.along));
  // A hair of slack, so that 99.5 as typed is within its half per cent.
  const within = (limit: number) => worst <= limit + 1e-9;
  const verdict = within(LARGEST_PRINT_ERROR) ? 'pass' : within(LARGEST_CORRECTION) ? 'compensate' : 'reprint';
  return { verdict, errors, factors, advice: ADVICE[verdict](factors) };
}

const percent = (fraction: number) => `${plain(fraction * 100, 1)} %`;

const ADVICE: Readonly<Record<PrintVerdict, (factors: PrintedBars) => string>> = {
  pass: () => `both bars are within ${percent(LARGEST_PRINT_ERROR)}; the sheet can be used`,
  compensate: ({ across, along }) =>
    `first try printing at 100 %, actual size; if the bars stay so, use a corrected file (across x ${plain(across, 4)}, along x ${plain(along, 4)}), printed with the same settings`,
  reprint: () =>
    `off by more than ${percent(LARGEST_CORRECTION)}: throw the sheet away, switch off everything that fits or scales in the print dialogue, check the paper size and print again`,
};
