/** The colour of a line as its file gives it. */
export interface Colour {
  /** `#rrggbb`, lower case; null when the file gives a number of DXF alone. */
  readonly hex: string | null;
  /** Colour number of DXF, 1 to 255; null in other formats. */
  readonly aci: number | null;
}

/** How a person names it: `#ff0000` or `aci:5`; null where the file gives none. */
export function colourName({ colour }: { readonly colour: Colour | null }): string | null {
  return colour?.hex ?? (colour?.aci == null ? null : `aci:${colour.aci}`);
}

/** The sixteen colours of HTML 4 and orange (CSS 2.1, 4.3.6); other names are rare in drawings for machines. */
const NAMED: Readonly<Record<string, string>> = {
  black: '000000',
  silver: 'c0c0c0',
  gray: '808080',
  grey: '808080',
  white: 'ffffff',
  maroon: '800000',
  red: 'ff0000',
  purple: '800080',
  fuchsia: 'ff00ff',
  magenta: 'ff00ff',
  green: '008000',
  lime: '00ff00',
  olive: '808000',
  yellow: 'ffff00',
  navy: '000080',
  blue: '0000ff',
  teal: '008080',
  aqua: '00ffff',
  cyan: '00ffff',
  orange: 'ffa500',
};
const HEX = /^#([0-9a-f]{3}|[0-9a-f]{6})$/;
const RGB = /^rgb\(\s*(\d{1,3}%?)\s*[, ]\s*(\d{1,3}%?)\s*[, ]\s*(\d{1,3}%?)\s*\)$/;

/** `#rrggbb` of a colour as SVG or a person writes it; null when it is none of these forms. */
export function hexOf(text: string): string | null {
  const word = text.trim().toLowerCase();
  const digits = HEX.exec(word)?.[1] ?? NAMED[word];
  if (digits !== undefined) return `#${digits.length === 3 ? [...digits].map((c) => c + c).join('') : digits}`;
  const parts = RGB.exec(word)?.slice(1);
  if (!parts) return null;
  return hexOfShares(
    ...(parts.map((part) => (part.endsWith('%') ? Number(part.slice(0, -1)) / 100 : Number(part) / 255)) as [number, number, number]),
  );
}

/** `#rrggbb` of red, green, blue from 0 to 1. */
export function hexOfShares(...shares: readonly [number, number, number]): string {
  const byte = (share: number) =>
    Math.round(255 * Math.min(1, Math.max(0, share)))
      .toString(16)
      .padStart(2, '0');
  return `#${shares.map(byte).join('')}`;
}
