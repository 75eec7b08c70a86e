import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import * as fc from 'fast-check';
import demoHand from '../../fixtures/demo-hand.json' with { type: 'json' };
import { readOwnDrawing } from '../../src/files/file-inputs.ts';
import type { PatternInputs } from '../../src/pattern/pattern.ts';
import { requestFromInputs } from '../../src/pattern/request-from-inputs.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { dxfComments, inputsToText } from '../../src/writers/inputs-text.ts';
import { type ByteMutation, byteMutations, mutateBytes } from './damage.ts';
import { type FileRecipe, fileRecipes, fileText } from './file-targets.ts';
import { bomb, bombText } from './hostile.ts';
import { readable } from './must-hold.ts';
import { type Target, target } from './target.ts';

const INPUTS: PatternInputs = {
  schema: 'knucklewright/inputs@1',
  geometryVersion: '1',
  date: '2026-11-25',
  kind: 'strip',
  hand: demoHand,
  block: { schema: 'knucklewright/block@1', id: 'own', places: { index: 'enclosed', long: 'raised', ring: 'enclosed' } },
  options: DEFAULT_STRIP_OPTIONS,
};

/** Files that carry the inputs as ours do, with little around them, so that mutations fall where something is read. */
const text = inputsToText(INPUTS);
const packed = deflateSync(text);
const CARRIERS: readonly Uint8Array[] = [
  Buffer.from(`<?xml version="1.0"?>\n<svg><metadata id="inputs">${text}</metadata><g/></svg>\n`),
  Buffer.from(
    `${dxfComments('title', INPUTS)
      .map((line) => `999\n${line}\n`)
      .join('')}0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n`,
  ),
  Buffer.from(`%PDF-1.7\n1 0 obj\n<< /Length ${text.length} >>\nstream\n${text}\nendstream\nendobj\n%%EOF\n`),
  Buffer.concat([Buffer.from('%PDF-1.7\n1 0 obj\n<< /Filter /FlateDecode >>\nstream\n'), packed, Buffer.from('\nendstream\n%%EOF\n')]),
];

/** Large PDF files that would keep a careless reader busy. */
const MEGABYTE = 1_000_000;
const PDF_BOMBS: Readonly<Record<string, () => Uint8Array>> = {
  'nothing but beginnings': () => Buffer.from(`%PDF-1.7\n${'stream\n'.repeat(2 * MEGABYTE)}endstream`),
  'beginnings without an end': () => Buffer.from(`%PDF-1.7\n${'stream\n'.repeat(2 * MEGABYTE)}`),
  'many swelling streams': () => {
    const swelling = Buffer.concat([Buffer.from('stream\n'), deflateSync(Buffer.alloc(1_900_000, 32)), Buffer.from('\nendstream\n')]);
    return Buffer.concat([Buffer.from('%PDF-1.7\n'), ...Array<Buffer>(4000).fill(swelling)]);
  },
  'one name over and over': () => Buffer.from(`%PDF-1.7\nstream\n{${'"schema":"knucklewright/inputs@'.repeat(60_000)}\nendstream\n`),
};

type CarrierRecipe =
  | { readonly base: number; readonly bytes: readonly ByteMutation[] }
  | { readonly bomb: string }
  | { readonly pdfBomb: string };

const carrierRecipes: fc.Arbitrary<CarrierRecipe> = fc.oneof(
  { weight: 197, arbitrary: fc.record({ base: fc.nat(CARRIERS.length - 1), bytes: byteMutations }) },
  { weight: 2, arbitrary: bomb },
  { weight: 1, arbitrary: fc.record({ pdfBomb: fc.constantFrom(...Object.keys(PDF_BOMBS)) }) },
);

const folder = mkdtempSync(join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'carriers-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));

function content(recipe: CarrierRecipe): Uint8Array {
  if ('bomb' in recipe) return Buffer.from(bombText(recipe.bomb));
  if ('pdfBomb' in recipe) return PDF_BOMBS[recipe.pdfBomb]?.() ?? Buffer.alloc(0);
  return mutateBytes(CARRIERS[recipe.base] ?? Buffer.alloc(0), recipe.bytes);
}

/** Targets of what a drawing carries back to be drawn again. */
export const REDRAW_TARGETS: readonly Target[] = [
  target<FileRecipe>({
    name: 'inputs',
    holds: 'inputs that a drawing carries are read as if a stranger had written them, or every fault is said',
    recipes: fileRecipes,
    feed(recipe) {
      const given = fileText(recipe, [INPUTS]);
      let inputs: unknown;
      try {
        inputs = JSON.parse(given);
      } catch {
        // What is no JSON is the next target's.
        return;
      }
      if (!/\d[eE]\+?\d{3}|\d{309}/.test(given)) readable(requestFromInputs(inputs, 'drawing.svg'), given);
    },
  }),
  target<CarrierRecipe>({
    name: 'redraw',
    holds: 'an SVG, DXF or PDF gives the request that made it, or the fault is said; none keeps the reader busy',
    recipes: carrierRecipes,
    async feed(recipe) {
      const bytes = content(recipe);
      const path = join(folder, 'drawing');
      writeFileSync(path, bytes);
      const request = await readOwnDrawing(path);
      readable(request, bytes.length < MEGABYTE ? Buffer.from(bytes).toString('latin1') : '');
    },
  }),
];
