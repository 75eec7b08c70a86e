import * as fc from 'fast-check';
import demoHand from '../../fixtures/demo-hand.json' with { type: 'json' };
import { blocks } from '../../src/block/library.ts';
import { type BrokenLine, heightAt } from '../../src/geometry/broken-line.ts';
import { type Point, segmentLength, segmentsOf, signedArea } from '../../src/geometry/path.ts';
import { readHand } from '../../src/hand/read-hand.ts';
import { makePattern } from '../../src/pattern/make-pattern.ts';
import type { Label, Mark, Pattern } from '../../src/pattern/pattern.ts';
import { layStrip } from '../../src/pattern/strip/lay-strip.ts';
import { readStripOptions } from '../../src/pattern/strip/read-options.ts';
import { SMALLEST_RADIUS } from '../../src/pattern/strip/sharp-edges.ts';
import { CHOICE_OPTIONS, DEFAULT_STRIP_OPTIONS, NUMBER_OPTIONS } from '../../src/pattern/strip/strip-options.ts';
import type { FlatStrip } from '../../src/pattern/strip/strip-outline.ts';
import { dxfWriter } from '../../src/writers/dxf/dxf.ts';
import { inputsFromDxf, inputsFromSvg } from '../../src/writers/inputs-text.ts';
import { svgNodeWriter } from '../../src/writers/svg/svg-node.ts';
import type { PatternWriter } from '../../src/writers/writer.ts';
import { type ByteMutation, byteMutations } from './damage.ts';
import { mutatedText } from './file-targets.ts';
import { anyCharacters, bomb, bombText, HOSTILE_KEYS, HOSTILE_TEXTS, hostileValue } from './hostile.ts';
import { fingers, someOptions, webSetbacks } from './measurable.ts';
import { finite, hold, readable } from './must-hold.ts';
import { type Target, target } from './target.ts';
import { checkWritten } from './written.ts';

const options = someOptions({ numbers: NUMBER_OPTIONS, choices: CHOICE_OPTIONS });

interface DrawRecipe {
  readonly digits: Readonly<Record<string, unknown>>;
  readonly webs: Readonly<Record<string, unknown>>;
  readonly side: string;
  readonly block: number;
  readonly options: object;
  /** 0: made and not only read, which takes a hundred times as long. */
  readonly make: number;
  /** 0: written as well. */
  readonly write: number;
}

const drawRecipes: fc.Arbitrary<DrawRecipe> = fc.record({
  digits: fingers,
  webs: webSetbacks,
  side: fc.constantFrom('left', 'right'),
  block: fc.nat(blocks().length - 1),
  options: fc.oneof({ weight: 3, arbitrary: options }, { weight: 2, arbitrary: fc.constant({}) }),
  make: fc.nat(3),
  write: fc.nat(9),
});

function demoText(writer: PatternWriter): string {
  const hand = readHand(demoHand);
  const [block] = blocks();
  if (!hand.ok || !block) throw new Error('no demo hand');
  const made = makePattern({ kind: 'strip', hand: hand.value, block, options: DEFAULT_STRIP_OPTIONS, date: '2026-11-25' });
  const written = made.ok ? writer.write(made.value.pattern) : made;
  if (!written.ok || typeof written.value !== 'string') throw new Error(JSON.stringify(written));
  return written.value;
}

type CarrierRecipe = { readonly bytes: readonly ByteMutation[] } | { readonly bomb: string };

const carrierRecipes: fc.Arbitrary<CarrierRecipe> = fc.oneof(
  { weight: 98, arbitrary: fc.record({ bytes: byteMutations }) },
  { weight: 2, arbitrary: bomb },
);

/** Only where the inputs are matters, so the drawing between is left out: mutations fall where something is read. */
function carrierTarget(name: string, writer: PatternWriter, shortened: (text: string) => string, read: typeof inputsFromSvg): Target {
  const valid = shortened(demoText(writer));
  return target<CarrierRecipe>({
    name,
    holds: `a ${writer.format} gives back the inputs that it carries, or the fault is said`,
    recipes: carrierRecipes,
    feed(recipe) {
      const text = 'bomb' in recipe ? bombText(recipe.bomb) : mutatedText(valid, recipe.bytes);
      readable(read(text), text);
    },
  });
}

const anyText = fc.oneof(fc.constantFrom(...HOSTILE_TEXTS), anyCharacters(40), fc.constantFrom('LEFT HAND', 'Ring & little', 'Ähnlich'));

interface WordsRecipe {
  readonly texts: readonly string[];
  readonly label: string;
  readonly inputs: readonly (readonly [string, unknown])[];
}

const wordsRecipes: fc.Arbitrary<WordsRecipe> = fc.record({
  texts: fc.array(anyText, { minLength: 5, maxLength: 5 }),
  label: fc.oneof({ weight: 3, arbitrary: fc.constant('LEFT') }, { weight: 1, arbitrary: anyText }),
  inputs: fc.array(fc.tuple(fc.oneof(fc.constantFrom(...HOSTILE_KEYS), anyText), hostileValue), { maxLength: 4 }),
});

/** A small drawing whose every text is hostile. */
function wordyPattern({ texts, label, inputs }: WordsRecipe): Pattern {
  const [title = '', id = '', partTitle = '', role = '', markTitle = ''] = texts;
  const corner = (x: number, y: number) => ({ x, y, bulge: 0 });
  const outline = { closed: true, vertices: [corner(1, 1), corner(19, 1), corner(19, 9)] };
  const mark: Mark = {
    layer: 'MARK',
    role,
    title: markTitle,
    paths: [{ closed: false, vertices: [corner(2, 2), corner(3, 2)] }],
    circles: [],
  };
  const word: Label = { layer: 'MARK', text: label, at: { x: 2, y: 3 }, height: 2, align: 'left', angle: 0 };
  const carried = Object.fromEntries(inputs.map(([key, value]) => [key, value] as const).filter(([key]) => key !== '__proto__'));
  return {
    kind: 'strip',
    title,
    parts: [{ id, title: partTitle, outline, holes: [], marks: [mark], labels: [word] }],
    beside: { marks: [], labels: [] },
    extents: { minX: 0, minY: 0, maxX: 20, maxY: 10 },
    inputs: { ...carried, schema: 'knucklewright/inputs@1', geometryVersion: '1', date: null },
    warnings: [],
  };
}

/** Steps along a strip, mm. */
const STEP = 0.25;
/** Corners nearer together than 3 mm are made one, those that turn by less than 0.1 degrees are left out: the share of a strip's area that it may change. */
const SIMPLIFIED = 0.005;
/** The arcs of a bent strip's outline are not told apart: the share of its area that corners may take, and the radius of those in hollows: as aimed for, or as the bend asks for. mm */
const BENT_TAKES = 0.15;
const AIMED_RADIUS = 8;
/** How far the arcs of a bent strip's outline may lie off its edges, mm. */
const BENT_OFF = 0.01;

/** How much an arc of a radius takes of a corner that turns by so much, mm2. */
const cornerArea = (radius: number, turn: number) => radius ** 2 * (Math.tan(Math.abs(turn) / 2) - Math.abs(turn) / 2);

/** What arcs of a radius add in the hollows of a line that a strip lies under, mm2. */
function hollowArea(line: BrokenLine, radius: number): number {
  const headings = line.slice(1).map((to, k) => Math.atan2(to.y - (line[k] as Point).y, to.x - (line[k] as Point).x));
  return headings.slice(1).reduce((sum, heading, k) => sum + cornerArea(radius, Math.max(0, heading - (headings[k] as number))), 0);
}

/** The area of an outline by its two edges before they are round, mm2: what lies between them, less the corners and more the hollows that its arcs round. */
function outlineArea({ outline, proximal, distal, frame, start, end }: FlatStrip) {
  const corners = [...new Set([start, ...proximal.map((p) => p.x), ...distal.map((p) => p.x), end])].sort((a, b) => a - b);
  let between = 0;
  for (const [k, from] of corners.slice(0, -1).entries()) {
    const whole = (corners[k + 1] as number) - from;
    const steps = Math.ceil(whole / STEP);
    for (let n = 0; n < steps; n++) {
      const v = from + (whole * (n + 0.5)) / steps;
      const [low, high] = [heightAt(proximal, v), heightAt(distal, v)];
      between += (whole / steps) * (high - low) * (frame ? frame.scale(v, (low + high) / 2) : 1);
    }
  }
  if (frame) {
    const scales = [...proximal, ...distal].map((p) => frame.scale(p.x, p.y));
    const [least, most] = [Math.min(...scales), Math.max(...scales)];
    const radius = Math.max(AIMED_RADIUS, SMALLEST_RADIUS / least ** 2);
    const below = proximal.map(({ x, y }) => ({ x, y: -y }));
    const adds = most * (hollowArea(distal, radius) + hollowArea(below, radius)) + BENT_OFF * 2 * (end - start);
    return { between, low: between * (1 - BENT_TAKES), high: between * (1 + SIMPLIFIED) + adds };
  }
  const rounded = segmentsOf(outline).reduce((sum, segment) => {
    const turn = 4 * Math.atan(segment.bulge);
    return turn === 0 ? sum : sum - Math.sign(turn) * cornerArea(segmentLength(segment) / Math.abs(turn), turn);
  }, 0);
  const off = SIMPLIFIED * between;
  return { between, low: between + rounded - off, high: between + rounded + off };
}

/** Targets from a hand to written files and back. */
export const DRAWING_TARGETS: readonly Target[] = [
  target<DrawRecipe>({
    name: 'draw',
    holds: 'any measurable hand with any allowed options gives a finite, sound, writable pattern, or a refusal that says why',
    recipes: drawRecipes,
    feed(recipe) {
      const given = JSON.stringify(recipe);
      const file = {
        schema: 'knucklewright/hand@1',
        code: 'TEST-01',
        side: recipe.side,
        units: 'mm',
        digits: recipe.digits,
        ...recipe.webs,
      };
      const hand = readable(readHand(file, 'hand.json'), given);
      const read = readable(readStripOptions([{ origin: 'options.json', values: recipe.options }]), given);
      const block = blocks()[recipe.block];
      if (!hand || !read || !block || recipe.make !== 0) return;
      const made = readable(makePattern({ kind: 'strip', hand, block, options: read, date: null }), given);
      if (!made) return;
      finite(made);
      const laid = readable(layStrip(hand, block, read), given);
      if (!laid) throw new Error(`drawn, but not laid: ${given}`);
      const area = made.pattern.parts.reduce((sum, part) => sum + signedArea(part.outline), 0);
      const { between, low, high } = outlineArea(laid.flat);
      hold(area > low && area < high, () => `an area of ${area}, of ${between} between the edges; from ${low} to ${high} was expected`);
      if (recipe.write === 0) checkWritten(made.pattern, given);
    },
  }),
  target<WordsRecipe>({
    name: 'words',
    holds: 'no text in a drawing becomes markup, a DXF group or another input',
    recipes: wordsRecipes,
    feed: (recipe) => checkWritten(wordyPattern(recipe), JSON.stringify(recipe)),
  }),
  carrierTarget('svg inputs', svgNodeWriter, (text) => text.slice(0, text.indexOf('</metadata>') + 200), inputsFromSvg),
  carrierTarget('dxf inputs', dxfWriter, (text) => text.slice(0, text.indexOf('HEADER') + 200), inputsFromDxf),
];
