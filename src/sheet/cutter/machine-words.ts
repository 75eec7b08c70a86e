import { cuttingNotes } from '../../pattern/cutting-notes.ts';
import type { Pattern } from '../../pattern/pattern.ts';
import { plain } from '../../units/number.ts';

/**
 * The words that a drawing for a machine leaves out, a line each, for a text beside it: what the file holds and where it lies, the order of the tools, the
 * kerf, then what the whole drawing would say.
 * @param whole the drawing with all its words
 * @param machine what the machine gets
 */
export function machineWords(whole: Pattern, machine: Pattern): readonly string[] {
  const { maxX, maxY } = machine.extents;
  const mm = (value: number) => plain(value, 2);
  const { notes, lists = [] } = whole;
  return [
    whole.title,
    '',
    `The drawing is ${mm(maxX)} x ${mm(maxY)} mm; its lower left corner is 0,0. Check that size at the machine before cutting.`,
    ...placeOnSheet(whole, machine),
    ...cuttingNotes(machine),
    ...lists.flatMap(({ heading, lines }) => ['', ...(heading === '' ? [] : [heading]), ...lines]),
    ...(notes
      ? [
          ...section('FACTS', notes.facts),
          ...notes.cutLists.flatMap((list) =>
            section(`${list.title.toUpperCase()}, ${list.from}`, [
              `${mm(list.length)} long, ${mm(list.width)} wide`,
              ...list.rows.map((row) => `${mm(row.at).padStart(8)}   ${row.title}`),
              ...list.remarks,
            ]),
          ),
          ...section('STEPS', notes.steps),
          ...section('CHECK', notes.checks),
          ...section('CAUTIONS', notes.cautions),
        ]
      : []),
  ];
}

function section(heading: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', heading, ...lines];
}

/** Where a cropped drawing lies on its sheet of plastic. */
function placeOnSheet(whole: Pattern, machine: Pattern): readonly string[] {
  const [before, after] = [whole, machine].map((pattern) => pattern.parts[0]?.outline.vertices[0]);
  if (whole.kind !== 'sheet' || !before || !after || whole.lists === undefined) return [];
  const sameEverywhere = whole.parts[0]?.id === machine.parts[0]?.id;
  const [x, y] = [before.x - after.x, before.y - after.y];
  if (!sameEverywhere) return [];
  return [`On the sheet of plastic it begins ${plain(x, 2)} mm from the left edge and ${plain(y, 2)} mm from the lower edge.`];
}
