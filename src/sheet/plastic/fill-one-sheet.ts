import type { PackPart, Put, Room } from './pack-box.ts';

/** A box round some of the parts, laid so that shears can cut them apart, whole units. */
interface Laid {
  readonly along: number;
  readonly across: number;
  readonly of:
    | { readonly part: PackPart; readonly turned: boolean }
    | { readonly first: Laid; readonly second: Laid; readonly isBeside: boolean };
}

/** Sets of parts are bits of a number, and each set is looked at with each of its halves: 3 to the power of the parts. */
const MOST_PARTS = 16;
/** Pairs of boxes that are put together before the search gives up. */
const MOST_WORK = 4_000_000;

/**
 * All parts on one sheet, cut from edge to edge, if there is a way: any such layout is one of two smaller ones side by side, so the least boxes of each set of
 * parts follow from those of its subsets (after Gilmore & Gomory, Oper Res 1965;13:94-120). Boxes that waste more than the sheet can spare, or that another
 * of the same parts undercuts both ways, are left out, which loses no layout.
 * @returns null where there is none, where there are more than 16 parts, and where the work is too much
 */
export function fillOneSheet(parts: readonly PackPart[], room: Room, turns: readonly boolean[]): readonly Put[] | null {
  if (parts.length === 0 || parts.length > MOST_PARTS) return null;
  const all = 2 ** parts.length - 1;
  const area = new Float64Array(all + 1);
  for (let set = 1; set <= all; set++) {
    const lowest = 31 - Math.clz32(set & -set);
    const part = parts[lowest] as PackPart;
    area[set] = (area[set & (set - 1)] ?? 0) + part.length * part.width;
  }
  const spare = room.along * room.across - (area[all] ?? 0);
  if (spare < 0) return null;
  const least: Laid[][] = new Array(all + 1);
  let work = 0;
  for (let set = 1; set <= all; set++) {
    const boxes: Laid[] = [];
    least[set] = boxes;
    const offer = (along: number, across: number, of: Laid['of']) => {
      if (along > room.along || across > room.across || along * across - (area[set] ?? 0) > spare) return;
      if (boxes.some((box) => box.along <= along && box.across <= across)) return;
      for (let k = boxes.length - 1; k >= 0; k--) {
        const box = boxes[k] as Laid;
        if (along <= box.along && across <= box.across) boxes.splice(k, 1);
      }
      boxes.push({ along, across, of });
    };
    const lowest = set & -set;
    if (set === lowest) {
      const part = parts[31 - Math.clz32(set)] as PackPart;
      for (const turned of turns) offer(turned ? part.width : part.length, turned ? part.length : part.width, { part, turned });
      continue;
    }
    // Each pair of halves once: the first has the lowest part.
    const others = set ^ lowest;
    for (let second = others; second > 0; second = (second - 1) & others) {
      const ones = least[set ^ second] as Laid[];
      const twos = least[second] as Laid[];
      if (ones.length === 0 || twos.length === 0) continue;
      work += ones.length * twos.length;
      if (work > MOST_WORK) return null;
      for (const first of ones)
        for (const other of twos) {
          offer(first.along + other.along, Math.max(first.across, other.across), { first, second: other, isBeside: true });
          offer(Math.max(first.along, other.along), first.across + other.across, { first, second: other, isBeside: false });
        }
    }
  }
  const [whole] = least[all] as Laid[];
  return whole === undefined ? null : putDown(whole, 0, 0);
}

function putDown({ of }: Laid, x: number, y: number): readonly Put[] {
  if ('part' in of) return [{ part: of.part.part, x, y, turned: of.turned }];
  const { first, second, isBeside } = of;
  return [...putDown(first, x, y), ...(isBeside ? putDown(second, x + first.along, y) : putDown(second, x, y + first.across))];
}
