import { parseLength } from '../../units/length.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';

/** No sheet of plastic is larger, mm. */
const LARGEST_SIDE = 5000;

/** A sheet's sides, mm, the longer one first, from `457x610` or `18inx24in`. Fails with `SHEET_SIZE`. @param name how messages call it */
export function readSheetSize(text: string, name: string): Result<{ readonly along: number; readonly across: number }> {
  const wrong = (why: string): Problem => ({ code: 'SHEET_SIZE', where: name, message: `${name}: ${why}.`, kind: 'input' });
  const sides = text.split(/\s*[x×*]\s*/i);
  if (sides.length !== 2) return failure(wrong(`${quote(text)} is no size; write it as 457x610`));
  const problems: Problem[] = [];
  const mm = sides.map((side) => {
    const parsed = parseLength(side, 'mm');
    if (parsed.ok && parsed.mm <= LARGEST_SIDE) return parsed.mm;
    problems.push(wrong(parsed.ok ? `${side} is over ${LARGEST_SIDE} mm` : parsed.reason));
    return 0;
  });
  if (problems.length > 0) return failure(...problems);
  return success({ along: Math.max(...mm), across: Math.min(...mm) });
}
