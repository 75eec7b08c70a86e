import { GONIOMETRY_FIELDS, type Joint, type MotionKey } from '../hand/target-motion.ts';
import { BEYOND_STRAIGHT, parseDegrees } from '../units/angle.ts';
import { plain } from '../units/number.ts';
import { quote } from '../units/quote.ts';
import type { Motion } from './case.ts';
import type { VisitFile } from './case-schema.ts';

type MotionFile = VisitFile['goniometry']['pip']['active'];

export type ParsedMotion = { readonly ok: true; readonly motion: MotionFile } | { readonly ok: false; readonly reason: string };

/**
 * A joint's motion as a person types it: "25/85" is an extension deficit of 25 and flexion of 85, "hyper 10/85" goes 10 beyond straight.
 * A minus sign is refused: some write a deficit with it and some hyperextension. Also refuses what is out of the joint's range and a
 * joint that bends less than it straightens. The reason quotes the input and is a sentence without its full stop.
 */
export function parseMotion(text: string, joint: Joint): ParsedMotion {
  const refused = (why: string): ParsedMotion => ({ ok: false, reason: `${quote(text)} ${why}` });
  const parts = text.split('/').map((part) => part.trim());
  const [first, second] = parts;
  if (first === undefined || second === undefined || parts.length !== 2) {
    return refused(`is not two angles with a stroke between; write ${motionHint(joint)}`);
  }
  if (/^[-−–]/.test(first)) {
    return refused(
      'has a minus sign, which some read as a deficit and some as hyperextension; write 25/85 for a deficit of 25, hyper 10/85 for 10 beyond straight',
    );
  }
  const key: MotionKey = BEYOND_STRAIGHT.test(first) ? 'hyperextension' : 'extensionDeficit';
  const extension = angle(first.replace(BEYOND_STRAIGHT, ''), joint, key);
  const flexion = angle(second, joint, 'flexion');
  if (!extension.ok) return refused(`is not understood: ${extension.reason}`);
  if (!flexion.ok) return refused(`is not understood: ${flexion.reason}`);
  if (key === 'extensionDeficit' && flexion.degrees < extension.degrees) {
    return refused('would bend less than it straightens; the extension deficit comes first, then flexion, both counted from straight');
  }
  return { ok: true, motion: { [key]: extension.degrees, flexion: flexion.degrees } as MotionFile };
}

function angle(text: string, joint: Joint, key: MotionKey) {
  const { label, refuse } = GONIOMETRY_FIELDS[joint][key];
  const parsed = parseDegrees(text);
  if (!parsed.ok) return parsed;
  const { degrees } = parsed;
  if (degrees >= refuse.from && degrees <= refuse.to) return parsed;
  return { ok: false, reason: `${label} ${quote(text)} is out of range; ${refuse.from} to ${refuse.to} degrees is allowed` } as const;
}

/** How a language writes a motion. */
export interface MotionWords {
  readonly number: (value: number) => string;
  readonly hyper: string;
}

const TYPED: MotionWords = { number: (value) => plain(value, 1), hyper: 'hyper' };

/** An extension deficit as it is shown: "25", or "hyper 10" for a negative one; the way in which it is typed. */
export function extensionText(deficit: number, { number, hyper }: MotionWords = TYPED): string {
  return deficit < 0 ? `${hyper} ${number(-deficit)}` : number(deficit);
}

/** A joint's motion in the way in which it is typed: "25/85", "hyper 10/85"; empty where it was not measured. */
export function motionText(motion: Motion | undefined, words: MotionWords = TYPED): string {
  return motion === undefined ? '' : `${extensionText(motion.extensionDeficit, words)}/${words.number(motion.flexion)}`;
}

/**
 * A joint's motion in neutral-zero notation, extension-0-flexion: a deficit of 40 with flexion 90 is 0-40-90, 10 beyond straight with
 * flexion 85 is 10-0-85. Neutral-zero method of the AO convention.
 */
export function neutralZero({ extensionDeficit, flexion }: Motion, number: MotionWords['number'] = TYPED.number): string {
  const [beyond, zero] = extensionDeficit < 0 ? [-extensionDeficit, 0] : [0, extensionDeficit];
  return [beyond, zero, flexion].map(number).join('-');
}

/** How to type a joint's motion and what is allowed, for a prompt or a message. */
export function motionHint(joint: Joint): string {
  const { extensionDeficit, flexion } = GONIOMETRY_FIELDS[joint];
  return `extension deficit / flexion, as 25/85; deficit ${extensionDeficit.refuse.from} to ${extensionDeficit.refuse.to}, flexion ${flexion.refuse.from} to ${flexion.refuse.to} degrees (beyond straight: hyper 10/85)`;
}
