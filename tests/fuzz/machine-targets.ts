import * as fc from 'fast-check';
import { readClinic } from '../../src/cli/clinic-file.ts';
import { describeInspection } from '../../src/cli/describe-inspection.ts';
import { inspectFile } from '../../src/inspect/inspect-file.ts';
import { readCutter } from '../../src/sheet/cutter/cutter-profile.ts';
import { parseJsonText } from '../../src/units/json-text.ts';
import { dxfWriter } from '../../src/writers/dxf/dxf.ts';
import { DEFAULT_OUTPUT_SETTINGS } from '../../src/writers/output-settings.ts';
import { pdfWriter } from '../../src/writers/pdf/pdf.ts';
import { svgNodeWriter } from '../../src/writers/svg/svg-node.ts';
import knife from '../../templates/cutters/knife.json' with { type: 'json' };
import laser from '../../templates/cutters/laser-if-allowed.json' with { type: 'json' };
import pen from '../../templates/cutters/pen-and-scissors.json' with { type: 'json' };
import { samplePattern } from '../sample-pattern.ts';
import { type ByteMutation, byteMutations, mutateBytes } from './damage.ts';
import { type FileRecipe, fileRecipes, fileText } from './file-targets.ts';
import { bomb, bombText } from './hostile.ts';
import { finite, hold, readable } from './must-hold.ts';
import { type Target, target } from './target.ts';

const PROFILES: readonly unknown[] = [knife, laser, pen];
const CLINICS: readonly unknown[] = [
  {
    schema: 'knucklewright/clinic@1',
    paper: 'letter',
    language: 'de',
    thickness: '1/16 in',
    skinClearance: 0.5,
    sheet: '18inx24in',
    cutter: './own.json',
    shelf: 'shelf.csv',
    letterhead: ['An invented clinic'],
    telephone: '555',
  },
];

const DRAWINGS: readonly Uint8Array[] = [svgNodeWriter, dxfWriter, pdfWriter(DEFAULT_OUTPUT_SETTINGS.pdf)].map((writer) => {
  const written = writer.write(samplePattern);
  if (!written.ok) throw new Error(JSON.stringify(written.problems));
  return Buffer.from(written.value);
});

const MEGABYTE = 1_000_000;
/** Small files that grow when they are read, and large ones that repeat the worst. */
const DRAWING_BOMBS: Readonly<Record<string, () => string>> = {
  'entities in entities': () =>
    `<?xml version="1.0"?><!DOCTYPE svg [${Array.from({ length: 12 }, (_, k) => `<!ENTITY e${k + 1} "${`&e${k};`.repeat(10)}">`).join('')}]><svg>&e12;</svg>`,
  'groups in groups': () => `<svg xmlns="http://www.w3.org/2000/svg">${'<g transform="scale(2)">'.repeat(30_000)}`,
  'uses of uses': () =>
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">${Array.from({ length: 20 }, (_, k) => `<g id="u${k + 1}">${`<use xlink:href="#u${k}"/>`.repeat(10)}</g>`).join('')}<use xlink:href="#u20"/></svg>`,
  'a path of a million commands': () => `<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0${'l1 1'.repeat(MEGABYTE)}"/></svg>`,
  'a path of arcs': () =>
    `<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0${'a1e300 1e-300 0 1 1 1e300 1e-300'.repeat(20_000)}"/></svg>`,
  'blocks in blocks': () =>
    `0\nSECTION\n2\nBLOCKS\n${Array.from({ length: 20 }, (_, k) => `0\nBLOCK\n2\nB${k}\n${`0\nINSERT\n2\nB${k + 1}\n`.repeat(10)}0\nENDBLK\n`).join('')}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nINSERT\n2\nB0\n0\nENDSEC\n0\nEOF\n`,
  'a grid of inserts': () => '0\nSECTION\n2\nENTITIES\n0\nINSERT\n2\nB\n70\n32000\n71\n32000\n0\nENDSEC\n0\nEOF\n',
  'a spline of everything': () =>
    `0\nSECTION\n2\nENTITIES\n0\nSPLINE\n71\n30000\n${'40\n0\n10\n1e300\n20\n-1e300\n'.repeat(20_000)}0\nENDSEC\n0\nEOF\n`,
  'lines without end': () =>
    `0\nSECTION\n2\nENTITIES\n${'0\nLINE\n8\nCUT\n10\n0\n20\n0\n11\n9\n21\n9\n'.repeat(60_000)}0\nENDSEC\n0\nEOF\n`,
  'open brackets': () => `%PDF-1.7\n1 0 obj\n${'['.repeat(MEGABYTE)}`,
  'open dictionaries': () => `%PDF-1.7\n1 0 obj\n${'<</A '.repeat(200_000)}`,
  'a page that is its own parent': () =>
    '%PDF-1.7\n1 0 obj\n<</Type/Catalog/Pages 2 0 R>>\nendobj\n2 0 obj\n<</Type/Pages/Kids[2 0 R 2 0 R]/Parent 2 0 R/Count 9>>\nendobj\ntrailer\n<</Root 1 0 R>>\n%%EOF',
};

type DrawingRecipe =
  | { readonly base: number; readonly bytes: readonly ByteMutation[] }
  | { readonly bomb: string }
  | { readonly drawingBomb: string };

const drawingRecipes: fc.Arbitrary<DrawingRecipe> = fc.oneof(
  { weight: 195, arbitrary: fc.record({ base: fc.nat(DRAWINGS.length - 1), bytes: byteMutations }) },
  { weight: 2, arbitrary: bomb },
  { weight: 3, arbitrary: fc.record({ drawingBomb: fc.constantFrom(...Object.keys(DRAWING_BOMBS)) }) },
);

function content(recipe: DrawingRecipe): Uint8Array {
  if ('bomb' in recipe) return Buffer.from(bombText(recipe.bomb));
  if ('drawingBomb' in recipe) return Buffer.from(DRAWING_BOMBS[recipe.drawingBomb]?.() ?? '');
  return mutateBytes(DRAWINGS[recipe.base] ?? Buffer.alloc(0), recipe.bytes);
}

const CONTROL = /[\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069]/u;

/** Targets of what belongs to machines: their profiles, and drawings of whoever made them. */
export const MACHINE_TARGETS: readonly Target[] = [
  target<FileRecipe>({
    name: 'cutter',
    holds: 'a cutter profile is read, or every fault is said',
    recipes: fileRecipes,
    feed(recipe) {
      const text = fileText(recipe, PROFILES);
      const json = readable(parseJsonText(text, 'cutter.json'), text);
      if (json !== null) readable(readCutter(json, 'cutter.json'), text);
    },
  }),
  target<FileRecipe>({
    name: 'clinic',
    holds: "a clinic's file is read, or every fault is said",
    recipes: fileRecipes,
    feed(recipe) {
      const text = fileText(recipe, CLINICS);
      const json = readable(parseJsonText(text, 'clinic.json'), text);
      if (json !== null) readable(readClinic(json, 'clinic.json'), text);
    },
  }),
  target<DrawingRecipe>({
    name: 'inspect',
    holds: 'any SVG, DXF or PDF is judged with finite figures and clean text, whoever made it',
    recipes: drawingRecipes,
    feed(recipe) {
      const found = inspectFile(content(recipe));
      finite(found);
      for (const { code, message } of found.findings) {
        hold(code >= 100 && code < 600, () => `finding ${code}`);
        hold(message.length < 2000 && !CONTROL.test(message), () => `finding ${code}: ${JSON.stringify(message.slice(0, 300))}`);
      }
      const shown = describeInspection(found, 'drawing');
      hold(!CONTROL.test(shown.replaceAll('\n', '')), () => 'a control character in what is shown');
    },
  }),
];
