import { heldDigits, heldPlace, placedDigits } from '../../block/block.ts';
import type { WhyBlock } from '../../block/choose-block.ts';
import { LACKING, WANTED_MP } from '../../block/deficit-kind.ts';
import { handWords } from '../hand-words.ts';
import type { Language } from '../language.ts';
import { patternWords } from '../pattern/pattern-words.ts';
import { terminalSpeech } from './terminal-words.ts';

/** Why a block is drawn, a part of a sentence. */
export function sayWhyBlock(why: WhyBlock, language: Language): string {
  const { why: w } = terminalSpeech(language).w;
  if (why.kind === 'named') return w.named;
  if (why.kind === 'read') return w.read(why.file);
  const { digit, need, block } = why;
  const hand = handWords(language);
  const finger = hand.finger[digit];
  const { motion } = patternWords(language);
  const [lacks, wanted] = [motion[LACKING[need]], motion[WANTED_MP[need]]];
  if (block.places[digit] !== 'enclosed') return w.itself(finger, lacks, wanted, hand.place[heldPlace(block)]);
  const held = heldDigits(block);
  const count = placedDigits(block).length === 3 ? hand.block.three : hand.block.four;
  const place = (held.length > 1 ? hand.placeOfTwo : hand.place)[heldPlace(block)];
  return w.byOthers(finger, lacks, wanted, count, held.map((each) => hand.finger[each]).join(''), held.length === 2, place);
}
