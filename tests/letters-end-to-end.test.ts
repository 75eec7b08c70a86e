import { describe, expect, it } from 'vitest';
import { strokeText } from '../src/geometry/stroke-letters.ts';
import { inspectFile } from '../src/inspect/inspect-file.ts';
import type { Pattern } from '../src/pattern/pattern.ts';
import { dxfWriterFor } from '../src/writers/dxf/dxf.ts';
import { DEFAULT_OUTPUT_SETTINGS, DXF_FORMS } from '../src/writers/output-settings.ts';
import { svgNodeWriter } from '../src/writers/svg/svg-node.ts';
import { plateLike, sheetOf } from './cutter-patterns.ts';

/** Words with the accents of European languages, from a label to the strokes that a reader finds in the files. */
const WORDS = [
  'Größe links, äußerer Saum',
  'côté gauche, œil, façade, naïf',
  'muñeca ¿cuál? ángulo',
  'mão esquerda, três',
  'Źdźbło łokieć ręka żółć',
  'Příliš žluťoučký kůň ďábel',
  'árvíztűrő tükörfúrógép',
  'șold, mână, țesut',
  'šķīvis ģimene ņemt ļoti',
  'ąžuolas, šešių, įėjimas',
  'käsi, jõud, öö',
  'þumall, öxl, ðað',
  'Ålesund, smørrebrød, æble',
  'ığdır, şükür, İzmir',
  'ċavetta għajn ħobża żejt',
  'ŵyneb, tŷ',
];
const writers = [
  svgNodeWriter,
  ...DXF_FORMS.map((form) => dxfWriterFor({ ...DEFAULT_OUTPUT_SETTINGS, dxf: { ...DEFAULT_OUTPUT_SETTINGS.dxf, form } })),
];

function lettered(texts: readonly string[]): Pattern {
  const labels = texts.map((text, k) => ({
    layer: 'MARK' as const,
    text,
    at: { x: 100, y: 5 + 7 * k },
    height: 3,
    align: 'left' as const,
    angle: 0,
  }));
  return { ...sheetOf([plateLike('A')], 250, 150), beside: { marks: [], labels } };
}

describe('labels with accents', () => {
  it('reach every format as strokes on MARK, as long as they were drawn, with no text for a font', () => {
    const bare = lettered([]);
    const strokes = WORDS.map((text) => strokeText(text, { at: { x: 0, y: 0 }, height: 3 }));
    expect(strokes.flatMap((drawn) => drawn.unknown)).toEqual([]);
    for (const writer of writers) {
      const [without, whole] = [bare, lettered(WORDS)].map((pattern) => {
        const written = writer.write(pattern);
        if (!written.ok) throw new Error(JSON.stringify(written.problems));
        return inspectFile(Buffer.from(written.value));
      });
      expect(whole?.findings).toEqual([]);
      expect(whole?.texts).toBe(0);
      const marks = (found: typeof whole) => found?.layers.find((layer) => layer.name === 'MARK')?.length ?? 0;
      const inked = marks(whole) - marks(without);
      const paths = strokes.flatMap((drawn) => drawn.paths);
      expect(paths.length).toBeGreaterThan(500);
      const straight = paths.reduce(
        (sum, path) =>
          sum +
          path.vertices
            .slice(1)
            .reduce((part, v, k) => part + Math.hypot(v.x - (path.vertices[k]?.x ?? 0), v.y - (path.vertices[k]?.y ?? 0)), 0),
        0,
      );
      // Arcs are longer than their chords, at most by half of pi.
      expect(inked).toBeGreaterThan(straight);
      expect(inked).toBeLessThan((straight * Math.PI) / 2);
    }
  });

  it('name every character that has no strokes, and write nothing', () => {
    for (const writer of writers) {
      const written = writer.write(lettered(['left 左 hand', 'ok', 'Жук']));
      expect(written.ok ? [] : written.problems.map((p) => p.code)).toEqual(['LABEL_CHARACTERS_UNKNOWN', 'LABEL_CHARACTERS_UNKNOWN']);
      const messages = written.ok ? '' : written.problems.map((p) => p.message).join(' ');
      for (const named of ['"左" (U+5DE6)', '"Ж" (U+0416)', '"у" (U+0443)', '"к" (U+043A)']) expect(messages).toContain(named);
    }
  });
});
