import * as z from 'zod';

/** The form of one line that a person wrote, for a title or a note, of at most `most` letters. */
export function plainLine(most: number) {
  return z
    .string()
    .max(most)
    .regex(/^[^\p{Cc}\p{Cf}\p{Zl}\p{Zp}]*$/u, 'one line of plain text');
}

/** The form of the name of a block, plate or machine, which goes into file names. */
export function fileId() {
  return z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'small letters, digits and single hyphens')
    .max(48);
}
