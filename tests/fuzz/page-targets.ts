import * as fc from 'fast-check';
import gains from '../../fixtures/case-gains.json' with { type: 'json' };
import stalls from '../../fixtures/case-stalls.json' with { type: 'json' };
import demoHand from '../../fixtures/demo-hand.json' with { type: 'json' };
import demoPlateHand from '../../fixtures/demo-hand-plate.json' with { type: 'json' };
import { PLACES } from '../../src/block/block.ts';
import { blocks } from '../../src/block/library.ts';
import { DIGITS, SIDES, WEBS } from '../../src/hand/digits.ts';
import { DIGIT_FIELDS, PALM_FIELDS, WEB_FIELDS } from '../../src/hand/fields.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { STOP_SIGNS } from '../../src/hand/signs.ts';
import { derive, NOTHING_YET } from '../../src/page/derive.ts';
import { retyped } from '../../src/page/format.ts';
import { entriesOf, handFileText } from '../../src/page/hand-file.ts';
import { keptOf, stateOf } from '../../src/page/local-storage.ts';
import { type FileKind, fileOf } from '../../src/page/make-file.ts';
import { readOpened } from '../../src/page/open-file.ts';
import { printedBars, printIn } from '../../src/page/print-settings.ts';
import {
  EMPTY_VISIT,
  type Entries,
  emptyEntries,
  MOTION_IDS,
  type PageState,
  PLATE_DIGITS,
  ROUND_NOTATIONS,
  type Settings,
  setEntry,
  VISIT_ENTRIES,
} from '../../src/page/state.ts';
import { LANGUAGES, type Language } from '../../src/page/texts/languages.ts';
import { addVisit, newCase } from '../../src/page/visit.ts';
import * as writers from '../../src/page/writers.ts';
import { PLATE_FACES } from '../../src/pattern/plate/plate-design.ts';
import { CHOICE_OPTIONS, DEFAULT_STRIP_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import { caseText } from '../../src/record/write-case.ts';
import { checkPrintScale } from '../../src/sheet/paper/check-print-scale.ts';
import { PAPERS } from '../../src/sheet/paper/paper.ts';
import { LENGTH_UNITS } from '../../src/units/length.ts';
import { typed } from './field-targets.ts';
import { type FileRecipe, fileRecipes, fileText, WHOLE_HAND } from './file-targets.ts';
import { bombText } from './hostile.ts';
import { fingers, webSetbacks } from './measurable.ts';
import { finite, hold, readable } from './must-hold.ts';
import { checkShown } from './shown.ts';
import { type Target, target } from './target.ts';
import { checkDxf, checkSvg } from './written.ts';

/** Paths of all fields in which a person can type. */
const TYPED_FIELDS: readonly string[] = [
  ...['code', 'note', 'date', 'plate.angle', 'print.across', 'print.along'],
  ...DIGITS.flatMap((digit) => Object.keys(DIGIT_FIELDS).map((id) => `digits.${digit}.${id}`)),
  ...Object.keys(WEB_FIELDS).flatMap((id) => WEBS.map((web) => `${id}.${web}`)),
  ...Object.keys(PALM_FIELDS),
  ...MOTION_IDS.flatMap((id) => [`motion.${id}.lacks`, `motion.${id}.bends`]),
  ...['diagnosis', 'weeks'],
  ...Object.keys(DEFAULT_STRIP_OPTIONS).filter((key) => CHOICE_OPTIONS.every((o) => o.key !== key)),
  ...VISIT_ENTRIES.map((id) => `visit.${id}`),
];
const KINDS: readonly FileKind[] = ['svg', 'dxf', 'pdf', 'handout'];
const DECIMALS = ['.', ','] as const;

const settings: fc.Arbitrary<Settings> = fc.record({
  language: fc.constantFrom(...(Object.keys(LANGUAGES) as Language[])),
  // Most of the filled pages are in mm; in another unit theirs are no hands.
  unit: fc.oneof({ weight: 4, arbitrary: fc.constant('mm' as const) }, { weight: 1, arbitrary: fc.constantFrom(...LENGTH_UNITS) }),
  decimal: fc.constantFrom(...DECIMALS),
});

/** What is chosen and not typed: only what the page offers. */
const choices = fc.record({
  side: fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...SIDES) }, { weight: 1, arbitrary: fc.constant('' as const) }),
  target: fc.constantFrom('' as const, ...DIGITS),
  block: fc.constantFrom('auto', 'own', 'plate', ...blocks().map((block) => block.id)),
  places: fc.record({
    index: fc.constantFrom('out' as const, ...PLACES),
    long: fc.constantFrom('out' as const, ...PLACES),
    ring: fc.constantFrom('out' as const, ...PLACES),
    little: fc.constantFrom('out' as const, ...PLACES),
  }),
  faces: fc.constantFrom(...PLATE_FACES),
  plateDigits: fc.constantFrom(...PLATE_DIGITS),
  paper: fc.constantFrom(...Object.keys(PAPERS)),
  invented: fc.boolean(),
  swelling: fc.boolean(),
  hardEndFeel: fc.boolean(),
  hypermobile: fc.subarray([...DIGITS]),
  clinicianConfirms: fc.boolean(),
  stop: fc.constantFrom('' as const, 'none' as const, 'some' as const),
  stopSigns: fc.subarray([...STOP_SIGNS]),
  roundIn: fc.constantFrom(...ROUND_NOTATIONS),
  made: fc.constantFrom('', 'yes'),
});

type Choices = typeof choices extends fc.Arbitrary<infer T> ? T : never;
type Typed = typeof typed extends fc.Arbitrary<infer T> ? T : never;

/** Fingers and webs of any measurable hand, or none: then the page's own hand stays. */
function measuredHand(often: { readonly measured: number; readonly none: number }) {
  const hand = fc.record({ digits: fingers, webs: webSetbacks });
  return fc.oneof({ weight: often.measured, arbitrary: hand }, { weight: often.none, arbitrary: fc.constant(null) });
}

interface FieldsRecipe {
  readonly base: number;
  readonly measured: { readonly digits: object; readonly webs: object } | null;
  readonly choices: Choices | null;
  readonly typed: readonly (readonly [string, Typed])[];
  readonly settings: Settings;
  /** A page that is worked out in full, drawn and written, which takes a hundred times as long, and to what file; else null. */
  readonly look: FileKind | null;
}

/** Fields whose text is kept as it was typed: what is hostile in it goes on into the drawing or the case. */
const FREE_TEXTS = ['note', 'visit.comment'] as const;
/** A size that some field takes, as a person writes it. */
const size = fc
  .tuple(fc.double({ min: 7, max: 70, noNaN: true }), fc.constantFrom('', ' mm', '°', ' cm'))
  .map(([n, unit]) => n.toFixed(1) + unit);
const anyTyped = fc.oneof({ weight: 2, arbitrary: typed }, { weight: 3, arbitrary: size });

/** Mostly pages that are soon refused, and a few that are looked at, of which most can be drawn. */
const fieldsRecipes: fc.Arbitrary<FieldsRecipe> = fc.oneof(
  {
    weight: 98,
    arbitrary: fc.record({
      base: fc.nat(3),
      measured: measuredHand({ measured: 1, none: 19 }),
      choices: fc.option(choices, { nil: null }),
      typed: fc.array(fc.tuple(fc.constantFrom(...TYPED_FIELDS), anyTyped), { minLength: 1, maxLength: 2 }),
      settings,
      look: fc.constant(null),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      base: fc.integer({ min: 1, max: 3 }),
      measured: measuredHand({ measured: 1, none: 1 }),
      choices: fc.option(choices, { nil: null, freq: 4 }),
      typed: fc.array(
        fc.oneof(
          { weight: 3, arbitrary: fc.tuple(fc.constantFrom<string>(...FREE_TEXTS), typed) },
          { weight: 1, arbitrary: fc.tuple(fc.constantFrom(...TYPED_FIELDS), size) },
        ),
        { minLength: 1, maxLength: 2 },
      ),
      settings,
      look: fc.constantFrom(...KINDS),
    }),
  },
);

/** One in so many opened files and kept pages is looked at. */
const LOOKED_AT = 12;

const VISIT = { ...EMPTY_VISIT, date: '2026-11-25', wear: '8', lacks: '25', bends: '85', fits: 'yes' };

/** Pages that are filled in: none, a strip's, a plate's, and one whose every note is there; the last three with other measures where they are given. */
function baseEntries(base: number, decimal: Settings['decimal'], measured: object | null = null): Entries {
  const filled = base === 2 ? demoPlateHand : demoHand;
  const other = measured ? readHand({ ...filled, ...measured }) : null;
  const file = base === 0 ? null : other?.ok ? other : readHand(filled);
  if (!file?.ok) return emptyEntries(decimal);
  const entries = entriesOf(file.value.source, decimal);
  const plate = { faces: 'both' as const, digits: 'neighbours' as const, angle: '45', bend: 'split' as const };
  return { ...entries, ...(base === 2 ? { block: 'plate', plate } : {}), ...(base === 3 ? { visit: VISIT, date: '2026-11-25' } : {}) };
}

function chosen(entries: Entries, c: Choices): Entries {
  return {
    ...entries,
    ...{ side: c.side, target: c.target, block: c.block, places: c.places, invented: c.invented, hypermobile: c.hypermobile },
    ...{ clinicianConfirms: c.clinicianConfirms, stop: c.stop, stopSigns: c.stopSigns, roundIn: c.roundIn },
    flags: { ...entries.flags, swelling: c.swelling, hardEndFeel: c.hardEndFeel },
    plate: { ...entries.plate, faces: c.faces, digits: c.plateDigits },
    print: { ...entries.print, paper: c.paper },
    visit: { ...entries.visit, made: c.made },
  };
}

/** Works out what follows from a page, and looks at all of it where asked; the name of every file is plain, every number finite. */
function follow(state: PageState, given: string, kind: FileKind | null): void {
  const { entries } = state;
  const derived = derive(entries, state.settings, kind === null ? NOTHING_YET : null);
  finite(derived);
  if (derived.problems.length > 0) readable({ ok: false, problems: derived.problems }, given);
  readable({ ok: true, value: null, warnings: derived.drawn?.warnings ?? [] }, given);
  const again = JSON.parse(handFileText(entries, state.settings.unit)) as unknown;
  hold(readHand(again).ok === derived.hand.ok, () => 'the hand file that is saved is not the hand that was read');
  if (kind === null) return;
  checkShown(state, TYPED_FIELDS, given);
  const { drawn, average } = derived;
  const file =
    drawn &&
    !average &&
    readable(fileOf(kind, drawn, { print: entries.print, unit: state.settings.unit, isStopAsked: entries.stop !== '' }, writers), given);
  if (file) {
    hold(/^[A-Za-z0-9_-]+\.[a-z]+$/.test(file.name), () => `the name ${file.name}`);
    if (kind === 'svg') checkSvg(String(file.content));
    else if (kind === 'dxf') checkDxf(String(file.content));
    else hold(Buffer.from(file.content).subarray(0, 5).toString() === '%PDF-', () => 'no PDF');
  }
}

const KEPT: readonly unknown[] = [0, 1, 2, 3].map((base) => ({
  version: 2,
  file: null,
  entries: baseEntries(base, '.'),
  settings: { language: base === 1 ? 'de' : 'en', unit: 'mm', decimal: '.' },
  screen: base === 0 ? null : { pixelsPerMm: 4.1, pixelRatio: 2 },
}));

/** Targets of the page: what is typed into its fields, files that are opened, and what a browser kept. */
export const PAGE_TARGETS: readonly Target[] = [
  target<FieldsRecipe>({
    name: 'page fields',
    holds: 'whatever is typed into the page, it works out finite figures and clean words, draws them as nothing but a picture, and goes on',
    recipes: fieldsRecipes,
    feed(recipe) {
      const given = JSON.stringify(recipe);
      const { unit, decimal } = recipe.settings;
      const { measured } = recipe;
      let entries = baseEntries(recipe.base, decimal, measured && { digits: measured.digits, ...measured.webs });
      if (recipe.choices) entries = chosen(entries, recipe.choices);
      for (const [where, what] of recipe.typed) {
        const text = typeof what === 'string' ? what : bombText(what.bomb);
        entries = { ...entries, ...setEntry(entries, where, text) };
        for (const to of LENGTH_UNITS) retyped(text, { unit }, { unit: to, decimal });
      }
      const bars = printedBars(printIn(entries.print, unit));
      if (bars) finite(checkPrintScale(bars));
      const hand = readHand(JSON.parse(handFileText(entries, unit)));
      const started = hand.ok ? readable(newCase(hand.value), given) : null;
      const grown = started ? readable(addVisit(started.file, entries.visit, null), given) : null;
      if (grown) readable(caseText(grown.file), given);
      const state: PageState = { entries, settings: recipe.settings, screen: null, keep: false, file: grown?.file ?? null };
      follow(state, given, recipe.look);
    },
  }),
  target<{ readonly file: FileRecipe; readonly settings: Settings; readonly look: number }>({
    name: 'page files',
    holds: 'a hand or a case that is opened in the page is shown and worked out, or every fault is said',
    recipes: fc.record({ file: fileRecipes, settings, look: fc.nat(LOOKED_AT - 1) }),
    async feed(recipe) {
      const text = fileText(recipe.file, [demoHand, demoPlateHand, WHOLE_HAND, gains, stalls]);
      const opened = readable(await readOpened(text), text);
      if (!opened) return;
      const { hand, record } = opened;
      const { decimal } = recipe.settings;
      const entries = hand ? entriesOf(hand, decimal) : emptyEntries(decimal);
      const own = hand ? { ...recipe.settings, unit: hand.units } : recipe.settings;
      if (hand)
        hold(readHand(JSON.parse(handFileText(entries, hand.units))).ok, () => 'a hand that was opened cannot be read from the page');
      follow({ entries, settings: own, screen: null, keep: false, file: record }, text, recipe.look === 0 ? 'dxf' : null);
    },
  }),
  target<{ readonly file: FileRecipe; readonly look: number }>({
    name: 'page kept',
    holds: 'what a browser kept is taken up as it was, or not at all',
    recipes: fc.record({ file: fileRecipes, look: fc.nat(LOOKED_AT - 1) }),
    feed(recipe) {
      const text = fileText(recipe.file, KEPT);
      let kept: ReturnType<typeof keptOf>;
      try {
        kept = keptOf(text);
      } catch (error) {
        // The page asks the same way: a text that is no JSON counts as nothing kept.
        hold(error instanceof SyntaxError, () => String(error));
        return;
      }
      if (kept !== null) follow(stateOf(kept), text, recipe.look === 0 ? 'dxf' : null);
    },
  }),
];
