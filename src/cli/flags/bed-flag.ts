import { formatLength, parseLength } from '../../units/length.ts';
import { quote } from '../../units/quote.ts';
import { failure, type Result, success } from '../../units/result.ts';
import { flag, flagProblem } from './flag.ts';

/** Size of a machine's bed, mm; its lower left corner is 0,0. */
export interface Bed {
  readonly width: number;
  readonly height: number;
}

export const bedFlag = flag('--bed <WxH>', "the machine's bed, as 610x457 (mm) or 24x18in: everything must lie on it, lower left at 0,0");

/** Smallest and largest side of a bed, mm: a hand plotter, a wall plotter. */
const SIDES = { least: 50, most: 5000 } as const;

/** The bed that `--bed` names; null without it. */
export function readBed(text: string | undefined): Result<Bed | null> {
  if (text === undefined) return success(null);
  const [, first = '', second = '', unit = ''] = /^\s*([\d.,/ ]+?)\s*[x×*]\s*([\d.,/ ]+?)\s*(mm|cm|in|")?\s*$/i.exec(text) ?? [];
  const [width, height] = [first, second].map((side) => parseLength(`${side} ${unit || 'mm'}`, 'mm'));
  const wrong = (side: typeof width) => !side?.ok || side.mm < SIDES.least || side.mm > SIDES.most;
  if (!width?.ok || !height?.ok || wrong(width) || wrong(height)) {
    const range = `${formatLength(SIDES.least, 'mm')} to ${formatLength(SIDES.most, 'mm')}`;
    return failure(flagProblem('--bed', `${quote(text)} is no size; write width x height, each ${range}, as 610x457 or 24x18in`));
  }
  return success({ width: width.mm, height: height.mm });
}
