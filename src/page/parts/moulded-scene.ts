import { useEffect, useState } from 'preact/hooks';
import { type MouldedScene, mouldedScene } from '../../picture/moulded-hand.ts';
import type { Drawn } from '../derive.ts';

/** How long nothing may have changed before a hand is modelled, ms: it takes longer than a frame and must not stand in the way of typing. */
const REST = 350;
/** Cells of the modelled skin, mm. */
const STEP = 2.6;
/** Hands that are kept, for what is undone and looked at again. */
const MOST_KEPT = 6;

const kept = new Map<string, MouldedScene>();

/** What the model follows; an edit that changes none of it draws nothing anew. */
function keyOf(shown: Drawn): string {
  const { hand, options } = shown;
  const made = shown.kind === 'strip' ? shown.block.places : shown.design;
  return JSON.stringify([hand.side, hand.digits, hand.palm, hand.webs, hand.absent, hand.target?.digit, made, options]);
}

function model(shown: Drawn): MouldedScene {
  const key = keyOf(shown);
  const known = kept.get(key);
  if (known) return known;
  const { hand } = shown;
  const made = shown.pattern.notes?.made;
  const drawable = { ...hand, webSetback: hand.webs?.webSetback ?? {} };
  const worn = made === undefined ? {} : made.kind === 'strip' ? { strip: made.figures } : { plate: made.figures };
  const scene = mouldedScene({ hand: drawable, side: hand.side, ...worn, treated: hand.target?.digit ?? null, step: STEP });
  kept.set(key, scene);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
  return scene;
}

/**
 * The hand with its strip or plate as a solid, modelled once the page is at rest; null until the first one is there. Until a changed one is modelled the one
 * before it stands, and `current` says that it is not this one.
 */
export function useMouldedScene(shown: Drawn): { readonly scene: MouldedScene | null; readonly current: boolean } {
  const key = keyOf(shown);
  const [made, setMade] = useState<{ readonly key: string; readonly scene: MouldedScene } | null>(() => {
    const scene = kept.get(key);
    return scene ? { key, scene } : null;
  });
  // The key holds all that the model follows.
  useEffect(() => {
    if (made?.key === key) return;
    const take = () => setMade({ key, scene: model(shown) });
    if (kept.has(key)) return take();
    const wait = setTimeout(take, made === null ? 0 : REST);
    return () => clearTimeout(wait);
  }, [key]);
  return { scene: made?.scene ?? null, current: made?.key === key };
}
