import type { Pen, Tone } from '../pattern/drawing.ts';

/** mm; the finest still prints on an office printer. */
export const PEN_WIDTHS: Readonly<Record<Pen, number>> = { fine: 0.18, medium: 0.35, heavy: 0.8 };

/** Ink, grey and accent keep 4.5 to 1 on white (WCAG 2.2, 1.4.3); pale is for lines of the background, wash and paper for areas only. */
export const TONES: Readonly<Record<Tone, string>> = {
  ink: '#1c1f22',
  grey: '#5c6268',
  pale: '#c9ced3',
  wash: '#e6edf2',
  paper: '#ffffff',
  accent: '#0b5a6b',
};
