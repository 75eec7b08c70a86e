import longAndRingLoweredInFour from '../../templates/blocks/long-and-ring-lowered-in-four.json' with { type: 'json' };
import longAndRingRaisedInFour from '../../templates/blocks/long-and-ring-raised-in-four.json' with { type: 'json' };
import longLoweredInFour from '../../templates/blocks/long-lowered-in-four.json' with { type: 'json' };
import longLoweredInThree from '../../templates/blocks/long-lowered-in-three.json' with { type: 'json' };
import longRaisedInFour from '../../templates/blocks/long-raised-in-four.json' with { type: 'json' };
import longRaisedInThree from '../../templates/blocks/long-raised-in-three.json' with { type: 'json' };
import ringLoweredInFour from '../../templates/blocks/ring-lowered-in-four.json' with { type: 'json' };
import ringLoweredInThree from '../../templates/blocks/ring-lowered-in-three.json' with { type: 'json' };
import ringRaisedInFour from '../../templates/blocks/ring-raised-in-four.json' with { type: 'json' };
import ringRaisedInThree from '../../templates/blocks/ring-raised-in-three.json' with { type: 'json' };
import type { Block } from './block.ts';
import { readBlock } from './read-block.ts';

const FILES: readonly unknown[] = [
  longRaisedInThree,
  longLoweredInThree,
  ringRaisedInThree,
  ringLoweredInThree,
  longRaisedInFour,
  longLoweredInFour,
  ringRaisedInFour,
  ringLoweredInFour,
  longAndRingRaisedInFour,
  longAndRingLoweredInFour,
];

let loaded: readonly Block[] | null = null;

/** The ten blocks that the rules allow, from `templates/blocks`. Throws only if a shipped file is broken. */
export function blocks(): readonly Block[] {
  loaded ??= FILES.map((file) => {
    const block = readBlock(file, 'templates/blocks');
    if (!block.ok) throw new Error(block.problems.map((p) => p.message).join('\n'));
    return block.value;
  });
  return loaded;
}

/** The block of that id, or undefined. */
export function blockById(id: string): Block | undefined {
  return blocks().find((block) => block.id === id);
}
