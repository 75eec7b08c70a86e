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
  // Skin is a grey with a little warmth, nobody's colour; a treated finger and the strip stay apart from it in black and white too.
  skin: '#f5f2ee',
  'skin-half': '#e4dfd9',
  'skin-shadow': '#cdc6be',
  treated: '#f6d9a8',
  'treated-half': '#e9c384',
  'treated-shadow': '#d2a862',
  nail: '#fffdfa',
  strip: '#6fa9b8',
  'strip-half': '#4c8a9a',
  'strip-shadow': '#33697a',
  done: '#c4c9cd',
  'done-half': '#acb3b8',
  'done-shadow': '#949ca2',
};
