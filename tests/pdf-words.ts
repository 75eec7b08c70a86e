import { execFileSync } from 'node:child_process';

/** All words of a PDF as another reader finds them, blanks made one. */
export function readPdfWords(path: string): string {
  return execFileSync('pdftotext', ['-layout', path, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
}
