import { serves } from '../block/block.ts';
import { blocks } from '../block/library.ts';
import { DIGITS } from '../hand/digits.ts';
import { DIGIT_FIELDS, type Field, PALM_FIELDS } from '../hand/fields.ts';
import { GEOMETRY_VERSION } from '../pattern/strip/geometry-version.ts';
import { makeStrip, stripFigures } from '../pattern/strip/strip.ts';
import { NUMBER_OPTIONS } from '../pattern/strip/strip-options.ts';
import { LENGTH_UNITS, MM_PER, parseLength } from '../units/length.ts';
import { plain } from '../units/number.ts';
import { visible } from '../units/quote.ts';
import type { Problem } from '../units/result.ts';
import { arrangementTitle } from './arrangement-words.ts';
import { goToField } from './parts/focus.ts';
import { freshEntries } from './rewrite-entries.ts';
import { setEntry, typedAt } from './state.ts';
import type { Store } from './store.ts';

/** A button that mends what is wrong, tried before it is offered where that can be tried. */
export interface Mend {
  readonly label: string;
  readonly apply: () => void;
}

const FIELDS: Readonly<Record<string, Field>> = { ...DIGIT_FIELDS, ...PALM_FIELDS };

/** What mends a problem; null where only the person knows, and then the field is gone to instead. */
export function mendFor(store: Store, problem: Problem, field: string): Mend | null {
  const texts = store.texts.peek();
  const words = texts.look;
  const goTo: Mend = { label: words.goTo, apply: () => goToField(store, field) };
  const set = (where: string, text: string, label: string): Mend => ({
    label,
    apply: () => {
      store.enter({ where, value: text }, (now) => setEntry(now, where, text));
      store.commit();
    },
  });
  switch (problem.code) {
    case 'RELIEF_TOO_DEEP':
    case 'NO_BLOCK':
      return narrowerStrip(store) ?? { label: words.another, apply: () => (store.panel.value = 'ways') };
    case 'FIELD_OUT_OF_RANGE':
      return otherUnit(store, field) ?? goTo;
    case 'MOTION_SIGN': {
      const typed = typedAt(store.entries.peek(), field).replace(/^\s*[-+−–]\s*/, '');
      return set(field, typed, words.use(visible(typed)));
    }
    case 'OPTION': {
      const option = NUMBER_OPTIONS.find((o) => o.key === field);
      if (!option) return goTo;
      const text = freshEntries(store.settings.peek()).options[option.key];
      return set(field, text, words.use(text || texts.options[option.word === 'auto' ? 'automatic' : 'none']));
    }
    case 'DATE':
      return set('date', '', words.clear(texts.options.date));
    case 'PLATE_ANGLE':
      return set('plate.angle', '45', words.use('45°'));
    case 'HARD_END_FEEL':
    case 'UNPROTECTED_REPAIR':
      return {
        label: words.confirm,
        apply: () => {
          store.enter({ where: 'clinicianConfirms', value: words.confirm }, () => ({ clinicianConfirms: true }));
          store.commit();
        },
      };
    case 'NO_DEFICIT':
    case 'BLOCK_COUNT':
    case 'BLOCK_NEIGHBOURS':
    case 'BLOCK_BORDER':
    case 'BLOCK_HOLDS_NONE':
    case 'BLOCK_MIXED':
      return { label: words.another, apply: () => (store.panel.value = 'ways') };
    case 'STRIP_TOO_NARROW':
      // With a web that would make it wide enough, that one is measured again; a measure is never set by a button.
      return problem.limit === undefined ? (otherArrangement(store) ?? goTo) : goTo;
    case 'DIGIT_NOT_MEASURED':
      return goTo;
    default: {
      const digit = DIGITS.find((d) => field.startsWith(`digits.${d}.`));
      if (problem.code === 'SECTION_IMPOSSIBLE' && digit)
        return {
          label: words.clear(texts.hand.measure.circumference),
          apply: () => {
            const where = `digits.${digit}.circumference`;
            store.enter({ where, value: '' }, (now) => setEntry(now, where, ''));
            store.commit();
            goToField(store, where);
          },
        };
      return goTo;
    }
  }
}

/**
 * The first other arrangement that does the same for the finger and keeps its least width on this hand; null where none does. A reading of the paper strip is
 * that of the arrangement it was woven for: the other one is tried, and taken, without it.
 */
function otherArrangement(store: Store): Mend | null {
  const { pictured, block, options } = store.derived.peek();
  if (!pictured || !block || !options) return null;
  const unread = { ...options, paperReading: 'none' as const };
  const other = blocks().find((b) => {
    if (b.id === block.id || !serves(b, block, pictured.target?.digit)) return false;
    const made = stripFigures(pictured, b, unread, GEOMETRY_VERSION, 'no offers');
    return made.ok && made.value.tooNarrow === null;
  });
  if (!other) return null;
  const title = arrangementTitle(other, store.texts.peek());
  return {
    label: store.texts.peek().look.use(title),
    apply: () => {
      store.arrange({ where: 'block', value: title }, { block: other.id });
      store.commit();
    },
  };
}

/** What the automatic width and minimum width begin with, mm. */
const WIDEST = 20;
const LEAST = 10;
/** How narrow the palmar relief may then leave it, mm, tried in this order. */
const NARROWER = [8, 7, 6, 5];

/** The widest narrower strip that can be made for this hand, tried from wide to narrow; null where none can. */
function narrowerStrip(store: Store): Mend | null {
  const { pictured, block, options, plan } = store.derived.peek();
  const wanted = block ?? plan?.notMakeable[0]?.block;
  if (!pictured || !wanted || !options) return null;
  const from = options.width === 'auto' ? WIDEST : options.width;
  const asked = options.minimumWidth === 'auto' ? LEAST : options.minimumWidth;
  for (let width = Math.ceil(from) - 1; width >= 8; width--) {
    const narrowest = [asked, ...NARROWER].filter((least) => least <= Math.min(width, asked));
    const minimumWidth = narrowest.find((least) => makeStrip(pictured, wanted, { ...options, width, minimumWidth: least }, null).ok);
    if (minimumWidth === undefined) continue;
    return {
      label: store.texts.peek().look.useWidth(store.format.peek().length(width)),
      apply: () => {
        const { unit, decimal } = store.settings.peek();
        const text = (mm: number) => plain(mm / MM_PER[unit], 4).replace('.', decimal);
        store.enter({ where: 'width', value: text(width) }, (now) => ({
          options: { ...now.options, width: text(width), minimumWidth: text(minimumWidth) },
        }));
        store.commit();
      },
    };
  }
  return null;
}

/** "Did you mean 17.5 mm?", where the bare number is plausible in another unit and in no more than one. */
function otherUnit(store: Store, where: string): Mend | null {
  const field = FIELDS[where.split('.').at(-1) ?? ''];
  const text = typedAt(store.entries.peek(), where);
  const { unit } = store.settings.peek();
  if (!field) return null;
  const plausible = LENGTH_UNITS.filter((other) => {
    if (other === unit) return false;
    const read = parseLength(text, other, { zero: true });
    return read.ok && read.notation === 'number' && read.mm >= field.typical.from && read.mm <= field.typical.to;
  });
  const [other] = plausible;
  if (other === undefined || plausible.length > 1) return null;
  const texts = store.texts.peek();
  return {
    label: texts.look.inUnit(text.trim(), texts[other]),
    apply: () => {
      const value = `${text.trim()} ${other}`;
      store.enter({ where, value }, (now) => setEntry(now, where, value));
      store.commit();
    },
  };
}
