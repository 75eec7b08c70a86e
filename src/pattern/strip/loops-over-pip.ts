import type { DigitName } from '../../hand/digits.ts';
import { estimatePipCircumference } from '../../hand/estimate.ts';
import type { Hand } from '../../hand/hand.ts';
import { plain } from '../../units/number.ts';
import type { Warning } from '../../units/result.ts';
import type { Loop } from './strip-loops.ts';
import type { StripOptions, StripSettings } from './strip-options.ts';

/**
 * An estimate has to be beyond the loop by this many standard deviations before it counts: 99 in 100 joints of that mean are larger. A digit that is
 * thin at the loop is thin at its joint as well, which the estimate does not know.
 */
const SURE = 2.326;

/** A loop and the joint that it cannot pass, mm. */
interface TightLoop {
  readonly digit: DigitName;
  readonly loop: number;
  readonly pip: number;
  readonly isMeasured: boolean;
}

/**
 * `LOOP_OVER_PIP` where a loop round one digit, closed for good, cannot pass its PIP joint: by the joint's measured circumference, or where an
 * estimate leaves hardly a doubt. Then the seam is to open, and opens already where that was left to the program.
 * @param canOpen tries the strip with a seam that opens, before it is offered
 */
export function loopsOverPip(
  hand: Hand,
  loops: readonly Loop[],
  seam: { readonly asked: StripOptions['seam']; readonly used: StripSettings['seam'] } = { asked: 'lap', used: 'lap' },
  canOpen: () => boolean = () => true,
): readonly Warning[] {
  // Who asked for a seam that opens needs not be told.
  if (seam.asked === 'opening') return [];
  const tight = loops.flatMap(({ digits, innerCircumference }) => {
    const [digit] = digits;
    const pip = digit === undefined || digits.length > 1 ? null : leastPip(hand, digit);
    return digit === undefined || pip === null || innerCircumference >= pip.least ? [] : [{ digit, loop: innerCircumference, ...pip }];
  });
  const [first] = tight;
  if (!first) return [];
  const list = tight.map(
    ({ digit, loop, pip, isMeasured }: TightLoop) =>
      `${digit} (${plain(loop, 1)} inside, PIP ${isMeasured ? '' : 'about '}${plain(pip, 1)} round)`,
  );
  return [
    {
      code: 'LOOP_OVER_PIP',
      where: first.isMeasured ? `digits.${first.digit}.pipCircumference` : 'skinClearance',
      message: `a loop that is closed for good does not pass over the PIP joint of ${list.join(', ')}`,
      value: first.loop,
      limit: first.pip,
      next: `${nextFor(seam.used, canOpen)}${first.isMeasured ? '' : '; measure pipCircumference to be sure'}`,
    },
  ];
}

function nextFor(used: StripSettings['seam'], canOpen: () => boolean): string {
  const how = 'leave the lap unbonded and close it with a strap';
  if (used === 'opening') return `the seam opens: ${how}`;
  return canOpen() ? `make the seam so that it opens (--seam opening): ${how}` : 'do not make this strip: it could not be taken off';
}

/** The joint's circumference, and the least that it can be taken for. */
function leastPip(hand: Hand, digit: DigitName): { readonly pip: number; readonly least: number; readonly isMeasured: boolean } | null {
  const measured = hand.digits[digit]?.pipCircumference;
  if (measured !== undefined) return { pip: measured, least: measured, isMeasured: true };
  const estimate = estimatePipCircumference(hand, digit);
  return estimate === null ? null : { pip: estimate.mm, least: estimate.mm - SURE * estimate.sd, isMeasured: false };
}
