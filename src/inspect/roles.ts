import type { ReadDrawing } from './drawing.ts';

/** What a machine does with a layer. */
export type Role = 'cut' | 'mark' | 'info';

/** Words in layer names of many shops and languages. Common practice, no source. */
const WORDS: readonly (readonly [Role, RegExp])[] = [
  ['info', /info|note|dimension|guide|construct|defpoints|frame|page|title/i],
  ['mark', /mark|score|engrav|etch|pen|draw|plot|fold|crease|text|label|gravur|gravure|incis/i],
  ['cut', /cut|outline|contour|kontur|schnitt|schneid|d[eé]coup|corte|taglio|snij|sk[aä]r/i],
];

/**
 * What each layer is for, by its name. Where no name says that it is to be cut, whatever is not known to be a mark or information is taken as
 * cut; paper (PDF) without such a name is not cut at all.
 */
export function rolesOf(drawing: ReadDrawing): ReadonlyMap<string, Role> {
  const names = [...new Set([...drawing.layers.map((layer) => layer.name), ...drawing.curves.map((curve) => curve.layer)])];
  const known = new Map(names.map((name) => [name, WORDS.find(([, words]) => words.test(name))?.[0]]));
  const hasCut = [...known.values()].includes('cut');
  const otherwise: Role = hasCut || drawing.format === 'pdf' ? 'mark' : 'cut';
  return new Map(names.map((name) => [name, known.get(name) ?? otherwise]));
}
