/**
 * A line of CSV with commas. A cell that a spreadsheet would take for a formula (it begins with = + - @, a tab or a carriage return, and is no plain number)
 * gets an apostrophe before it, which spreadsheets show as text; so no cell can make them run anything (OWASP, CSV Injection).
 */
export function csvLine(cells: readonly (string | number)[]): string {
  return cells.map(csvCell).join(',');
}

const FORMULA = /^[\s]*[=+\-@\t\r]/;
const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

function csvCell(cell: string | number): string {
  const text = String(cell);
  const safe = FORMULA.test(text) && !PLAIN_NUMBER.test(text) ? `'${text}` : text;
  return /[",;\r\n']|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
