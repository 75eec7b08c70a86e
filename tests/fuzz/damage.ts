import * as fc from 'fast-check';
import { SCHEMAS } from '../../src/cli/commands/schema.ts';
import { anyCharacters, HOSTILE_KEYS, HOSTILE_TEXTS, hostileValue } from './hostile.ts';

/** One mutation of the bytes of a file; `at` is a share of its length. */
export interface ByteMutation {
  readonly kind: 'flip' | 'cut' | 'repeat' | 'insert' | 'truncate';
  readonly at: number;
  readonly amount: number;
  readonly text: string;
}

/** One mutation of a JSON value; `where` picks among all places in it. */
export interface JsonMutation {
  readonly kind: 'replace' | 'remove' | 'add';
  readonly where: number;
  readonly key: string;
  readonly value: unknown;
}

/** Every key and every word that a form of a file knows, whichever file it is: what is rarely written in a file is put there too. */
const known = knownIn(Object.values(SCHEMAS).map((schema) => schema()));

function knownIn(form: unknown): { readonly keys: readonly string[]; readonly words: readonly string[] } {
  const [keys, words] = [new Set<string>(), new Set<string>()];
  const look = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return;
    for (const [key, inner] of Object.entries(value)) {
      if (key === 'properties') for (const name of Object.keys(inner as object)) keys.add(name);
      for (const word of key === 'enum' ? (inner as readonly unknown[]) : key === 'const' ? [inner] : [])
        if (typeof word === 'string') words.add(word);
      look(inner);
    }
  };
  look(form);
  return { keys: [...keys], words: [...words] };
}

const share = fc.double({ min: 0, max: 1, noNaN: true });

export const byteMutations: fc.Arbitrary<readonly ByteMutation[]> = fc.array(
  fc.record({
    kind: fc.constantFrom('flip' as const, 'cut' as const, 'repeat' as const, 'insert' as const, 'truncate' as const),
    at: share,
    amount: fc.integer({ min: 1, max: 64 }),
    text: fc.oneof(fc.constantFrom(...HOSTILE_TEXTS), anyCharacters(8)),
  }),
  { minLength: 1, maxLength: 4 },
);

export const jsonMutations: fc.Arbitrary<readonly JsonMutation[]> = fc.array(
  fc.record({
    kind: fc.constantFrom('replace' as const, 'replace' as const, 'remove' as const, 'add' as const, 'add' as const),
    where: fc.nat(10_000),
    key: fc.oneof(fc.constantFrom(...HOSTILE_KEYS), fc.constantFrom(...known.keys), fc.string({ maxLength: 6 })),
    value: fc.oneof({ weight: 4, arbitrary: hostileValue }, { weight: 1, arbitrary: fc.constantFrom(...known.words) }),
  }),
  { minLength: 1, maxLength: 3 },
);

/** The bytes with all mutations, in order. */
export function mutateBytes(bytes: Uint8Array, mutations: readonly ByteMutation[]): Uint8Array {
  let now = Buffer.from(bytes);
  for (const { kind, at, amount, text } of mutations) {
    const place = Math.min(Math.floor(at * now.length), Math.max(0, now.length - 1));
    const [before, after] = [now.subarray(0, place), now.subarray(place)];
    if (kind === 'truncate') now = Buffer.from(before);
    else if (kind === 'cut') now = Buffer.concat([before, after.subarray(amount)]);
    else if (kind === 'insert') now = Buffer.concat([before, Buffer.from(text, 'utf8'), after]);
    else if (kind === 'repeat') now = Buffer.concat([before, ...Array<Buffer>(amount).fill(after.subarray(0, 64)), after]);
    else if (now.length > 0) now.writeUInt8(now.readUInt8(place) ^ (1 << (amount % 8)), place);
  }
  return now;
}

interface Place {
  readonly parent: Record<string, unknown>;
  readonly key: string;
}

/** A copy of the value with all mutations. Keys are defined, never assigned, so that `__proto__` becomes a key as JSON.parse makes it. */
export function mutateJson(original: unknown, mutations: readonly JsonMutation[]): unknown {
  const root: Record<string, unknown> = { root: structuredClone(original) };
  for (const { kind, where, key, value } of mutations) {
    // A value of its own each time: two mutations may bring the same object, which must not come to lie in itself.
    const hostile = structuredClone(value);
    const places = placesIn(root);
    const { parent, key: at } = places[where % places.length] ?? { parent: root, key: 'root' };
    const target = parent[at];
    if (kind === 'remove') delete parent[at];
    else if (kind === 'add' && typeof target === 'object' && target !== null && !Array.isArray(target)) define(target, key, hostile);
    else define(parent, at, hostile);
  }
  return root.root;
}

function define(object: object, key: string, value: unknown): void {
  Object.defineProperty(object, key, { value, enumerable: true, configurable: true, writable: true });
}

function placesIn(parent: Record<string, unknown>): Place[] {
  return Object.keys(parent).flatMap((key) => {
    const value = Object.getOwnPropertyDescriptor(parent, key)?.value as unknown;
    const inside = typeof value === 'object' && value !== null ? placesIn(value as Record<string, unknown>) : [];
    return [{ parent, key }, ...inside];
  });
}
