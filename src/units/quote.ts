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

/**
 * Text of any length with every character that a terminal obeys or hides as `\\u{…}`: control and bidirectional characters, line ends, halves of
 * pairs. For whole messages and file names.
 * @param lines true where the text is several lines: then line ends and tabs stay
 */
export function escapeInvisible(text: string, lines = false): string {
  return text.replace(UNSAFE, (c) => (lines && (c === '\n' || c === '\t') ? c : `\\u{${(c.codePointAt(0) ?? 0).toString(16)}}`));
}

/** JSON text that holds no such character raw: as `\\uXXXX`, which reads back the same. */
export function escapeInvisibleJson(json: string): string {
  const escaped = (c: string) => Array.from({ length: c.length }, (_, k) => `\\u${c.charCodeAt(k).toString(16).padStart(4, '0')}`).join('');
  return json.replace(UNSAFE, (c) => (c === '\n' ? c : escaped(c)));
}
