import type { Hand } from '../src/hand/hand.ts';

/** A hand made smaller or larger all over, as of a child; its angles stay. */
export function scaledHand({ digits, palm, ...hand }: Hand, by: number): Hand {
  const sized = <T extends object>(measures: T): T =>
    Object.fromEntries(Object.entries(measures).map(([key, value]) => [key, typeof value === 'number' ? value * by : sized(value)])) as T;
  return { ...hand, digits: sized(digits), palm: sized(palm) };
}
