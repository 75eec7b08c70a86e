import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { openHandTable } from '../../src/cli/read-hand-rows.ts';
import { HAND_COLUMNS, handOfRow } from '../../src/hand/hand-columns.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { CUT_LIST_COLUMNS } from '../../src/sheet/plastic/cut-list.ts';
import { readCutList } from '../../src/sheet/plastic/read-cut-list.ts';
import { readStock } from '../../src/sheet/plastic/read-stock.ts';
import { readShelf, shelfAfter, shelfText, takeFromShelf } from '../../src/sheet/plastic/shelf.ts';
import { type ByteMutation, byteMutations } from './damage.ts';
import { mutatedText, WHOLE_HAND } from './file-targets.ts';
import { bomb, bombText } from './hostile.ts';
import { hold, readable } from './must-hold.ts';
import { type Target, target } from './target.ts';

const CLINIC = readFileSync('fixtures/demo-clinic.csv', 'utf8').split('\n').slice(0, 8).join('\n');
/** A hand with every column that a table may have, and the demo's. */
const WHOLE = `${HAND_COLUMNS.map(({ name }) => name).join(',')}\n${HAND_COLUMNS.map(({ name }) => cellOf(name)).join(',')}\n`;
const CUT_LIST = `${CUT_LIST_COLUMNS.join(',')}\na,DEMO-01,left,ring-raised-in-four,214.25,20,2,"mid:10;turn:20",,yes\n`;
const CUT_LIST_JSON = readFileSync('fixtures/old/cut-list-1.json', 'utf8');
const SHELF = 'id,length,width,count\nA,182.5,33,4\nB,"7 in",20,0\n';
const STOCK = 'id,along,across\nwhole,610,457\nrest,"300 mm",200\n';

function cellOf(name: string): string {
  const value = (path: readonly string[]) =>
    path.reduce<unknown>((of, key) => (of as Record<string, unknown> | undefined)?.[key], WHOLE_HAND);
  const found = value(name.split('.')) ?? value(['digits', ...name.split('.')]) ?? '';
  if (Array.isArray(found)) return found.join(' ');
  return typeof found === 'boolean' ? (found ? 'yes' : 'no') : String(found);
}

/** Tables that are long, wide, never end a quote, or hold what a spreadsheet would run. */
const TABLE_BOMBS: Readonly<Record<string, () => string>> = {
  'a million rows': () => `id,along,across\n${'a,1,1\n'.repeat(1_000_000)}`,
  'a hundred thousand columns': () => `${'a,'.repeat(100_000)}a\n${'1,'.repeat(100_000)}1\n`,
  'an open quote': () => `id,along,across\n"${'a,1,1\n'.repeat(100_000)}`,
  'quotes only': () => `id,along,across\n${'"'.repeat(500_001)}`,
  'a long cell': () => `id,along,across\n${'9'.repeat(900_000)},1,1\n`,
};

type TableRecipe =
  | { readonly bytes: readonly ByteMutation[]; readonly base: number }
  | { readonly bomb: string }
  | { readonly tableBomb: string };

const tableRecipes: fc.Arbitrary<TableRecipe> = fc.oneof(
  { weight: 196, arbitrary: fc.record({ bytes: byteMutations, base: fc.nat(1) }) },
  { weight: 2, arbitrary: bomb },
  { weight: 2, arbitrary: fc.record({ tableBomb: fc.constantFrom(...Object.keys(TABLE_BOMBS)) }) },
);

function tableText(recipe: TableRecipe, ...valid: readonly string[]): string {
  if ('bomb' in recipe) return bombText(recipe.bomb);
  return 'tableBomb' in recipe
    ? (TABLE_BOMBS[recipe.tableBomb]?.() ?? '')
    : mutatedText(valid[recipe.base % valid.length] ?? '', recipe.bytes);
}

const folder = mkdtempSync(join(existsSync('/dev/shm') ? '/dev/shm' : tmpdir(), 'tables-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
/** Rows of one table that are looked at; a batch goes on to the end, row by row. */
const MOST_ROWS = 200;

/** Targets of tables: hands of a clinic, cut lists, stock. */
export const TABLE_TARGETS: readonly Target[] = [
  target<TableRecipe>({
    name: 'hands csv',
    holds: 'each row of a table of hands is a hand, or its fault is said; no row spoils another',
    recipes: tableRecipes,
    async feed(recipe) {
      const text = tableText(recipe, CLINIC, WHOLE);
      const path = join(folder, 'hands.csv');
      writeFileSync(path, text);
      const table = await openHandTable(path);
      if (!table.ok) return void readable(table, text);
      let count = 0;
      for await (const row of table.value.rows) {
        if (++count > MOST_ROWS) break;
        if (row.cells !== null) readable(readHand(handOfRow(row.cells, 'mm')), text);
        else readable({ ok: false, problems: [{ ...row.error, where: '', kind: 'input' }] }, text);
      }
    },
  }),
  target<TableRecipe>({
    name: 'cut list',
    holds: 'a cut list is read to finite pieces, or every fault is said',
    recipes: tableRecipes,
    feed(recipe) {
      const text = tableText(recipe, CUT_LIST, CUT_LIST_JSON);
      readable(readCutList(text, 'list.csv'), text);
    },
  }),
  target<TableRecipe>({
    name: 'stock',
    holds: 'a table of stock sheets is read to finite sizes, or every fault is said',
    recipes: tableRecipes,
    feed(recipe) {
      const text = tableText(recipe, STOCK);
      const stock = readable(readStock(text, 'stock.csv'), text);
      // A list of no sheets is a list: `sheets` writes one where nothing is left over, and takes it back.
      for (const { id, along, across } of stock ?? []) hold(along > 0 && across > 0, () => `${id} is ${along} x ${across}`);
    },
  }),
  target<TableRecipe>({
    name: 'shelf',
    holds: 'a shelf is read to finite strips and taken from, or every fault is said; what is left is a shelf again',
    recipes: tableRecipes,
    feed(recipe) {
      const text = tableText(recipe, SHELF);
      const shelf = readable(readShelf(text, 'shelf.csv'), text);
      if (shelf === null) return;
      for (const { id, length, width, count } of shelf)
        hold(length > 0 && width > 0 && count >= 0, () => `${id} is ${count} of ${length} x ${width}`);
      const taken = takeFromShelf(shelf, [{ id: 'A', length: 170.5, width: 20 }]);
      hold(shelf.length === 0 || readShelf(shelfText(shelfAfter(shelf, taken)), 'after.csv').ok, () => 'what is left is not read again');
    },
  }),
];
