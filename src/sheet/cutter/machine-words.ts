import { cuttingNotes } from '../../pattern/cutting-notes.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import type { Language } from '../../words/language.ts';
import { type SheetSpeech, sheetSpeech } from '../../words/sheet-words.ts';

/**
 * The words that a drawing for a machine leaves out, a line each, for a text beside it: what the file holds and where it lies, the order of the tools, the
 * kerf, then what the whole drawing would say.
 * @param whole the drawing with all its words
 * @param machine what the machine gets
 */
export function machineWords(whole: Pattern, machine: Pattern, language: Language = 'en'): readonly string[] {
  const speech = sheetSpeech(language);
  const w = speech.w.machine;
  const { maxX, maxY } = machine.extents;
  const mm = (value: number) => speech.number(value, 2);
  const { notes, lists = [] } = whole;
  return [
    whole.title,
    '',
    w.drawing(mm(maxX), mm(maxY)),
    ...placeOnSheet(whole, machine, speech),
    ...cuttingNotes(machine, language),
    ...lists.flatMap(({ heading, lines }) => ['', ...(heading === '' ? [] : [heading]), ...lines]),
    ...(notes
      ? [
          ...section(w.facts, notes.facts),
          ...notes.cutLists.flatMap((list) =>
            section(`${list.title.toUpperCase()}, ${list.from}`, [
              w.size(mm(list.length), mm(list.width)),
              ...list.rows.map((row) => `${mm(row.at).padStart(8)}   ${row.title}`),
              ...list.remarks,
            ]),
          ),
          ...section(w.steps, notes.steps),
          ...section(w.check, notes.checks),
          ...section(w.cautions, notes.cautions),
        ]
      : []),
  ];
}

function section(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', heading, ...lines];
}

/** Where a cropped drawing lies on its sheet of plastic. */
function placeOnSheet(whole: Pattern, machine: Pattern, { w, number }: SheetSpeech): readonly string[] {
  const [before, after] = [whole, machine].map((pattern) => pattern.parts[0]?.outline.vertices[0]);
  if (whole.kind !== 'sheet' || !before || !after || whole.lists === undefined) return [];
  const sameEverywhere = whole.parts[0]?.id === machine.parts[0]?.id;
  const [x, y] = [before.x - after.x, before.y - after.y];
  if (!sameEverywhere) return [];
  return [w.machine.onSheet(number(x, 2), number(y, 2))];
}
