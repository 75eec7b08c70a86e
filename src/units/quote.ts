const LONGEST_SHOWN = 48;
/** Control, line-break, bidirectional and other invisible characters, and broken surrogates: a message must not carry them raw. */
const UNSAFE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/**
 * Any value as it may stand in a message: text in double quotes, cut after 48 characters, invisible characters as `\u{…}`;
 * lists and objects only by their kind. Never throws.
 */
export function quote(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return `"${visible(value)}"`;
    case 'number':
    case 'boolean':
      return String(value);
    case 'undefined':
      return 'nothing';
    case 'object':
      return value === null ? 'null' : Array.isArray(value) ? 'a list' : 'an object';
    default:
      return `a ${typeof value}`;
  }
}

/** The text of `quote` without the quotes, for names of keys in a path. */
export function visible(text: string): string {
  const characters = Array.from(text.slice(0, 2 * LONGEST_SHOWN));
  const cut = characters.length > LONGEST_SHOWN || text.length > 2 * LONGEST_SHOWN;
  const shown = characters.slice(0, LONGEST_SHOWN).join('');
  return shown.replace(UNSAFE, (c) => `\\u{${(c.codePointAt(0) ?? 0).toString(16)}}`) + (cut ? '…' : '');
}
