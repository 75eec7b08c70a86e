import type { ChosenBlock } from '../block/choose-block.ts';
import { boxOf } from '../geometry/path.ts';
import { type MadePattern, type MadePlate, makePattern, type PatternRequest } from '../pattern/make-pattern.ts';
import type { Pattern } from '../pattern/pattern.ts';
import { holdsIn, plateName } from '../pattern/plate/plate-names.ts';
import { paperTrial } from '../pattern/strip/paper-trial.ts';
import { validatePattern } from '../pattern/validate-pattern.ts';
import { type ShelfStrip, shelfAfter, shelfText, type Taken, takeFromShelf, type Wanted } from '../sheet/plastic/shelf.ts';
import { type Result, success, type Warning } from '../units/result.ts';
import type { Language } from '../words/language.ts';
import { speechIn } from '../words/speech.ts';
import { sayWhyBlock } from '../words/terminal/say-why.ts';
import { terminalSpeech } from '../words/terminal/terminal-words.ts';
import { describeDrawing, describePlate, takenText } from './describe-drawing.ts';
import type { OutputPlan } from './flags/output-flags.ts';
import { SHELF_AFTER } from './flags/shelf-flag.ts';
import { checkOutput, outputNames, stemOf, type WrittenFile, writePatterns } from './write-patterns.ts';

/** Why it is drawn: for the block's reason, or again from the file that carries it; null for a plate that was asked for. */
export type WhyDrawn = ChosenBlock['why'] | { readonly kind: 'redrawn'; readonly file: string } | null;

/** What is to be drawn, why this, and where it goes. */
export interface Drawing {
  readonly request: PatternRequest;
  readonly why: WhyDrawn;
  readonly output: OutputPlan;
  /** Draw the paper strip of a trial as well: a page of the PDF, files of its own in other formats. */
  readonly paperTrial?: boolean;
  /** Strips in stock, of which the nearest that serves is named; null: there is no shelf. */
  readonly shelf?: readonly ShelfStrip[] | null;
  /** Write what is left of it beside the pattern. */
  readonly keepsShelf?: boolean;
}

export interface Drawn {
  readonly request: PatternRequest;
  readonly why: WhyDrawn;
  readonly report: MadePattern['report'] | MadePlate['report'];
  readonly files: readonly WrittenFile[];
  readonly taken: Taken | null;
}

/** Checks the folder, makes and proves the pattern, and writes the files together or none. */
export async function drawRequest({ request, why, output, paperTrial: wanted, shelf, keepsShelf }: Drawing): Promise<Result<Drawn>> {
  const stem = stemOf(request);
  // A PDF has the paper strip on a page of its own; drawings have it as files of their own.
  const drawings = output.formats.filter((format) => format !== 'pdf');
  const trialNames = wanted && drawings.length > 0 ? outputNames({ ...output, formats: drawings }, `${stem}-paper`) : [];
  const place = await checkOutput(output, [stem], [...trialNames, ...(shelf && keepsShelf ? [SHELF_AFTER] : [])]);
  if (!place.ok) return place;
  const made = makePattern(request);
  if (!made.ok) return made;
  const paper =
    wanted && request.kind === 'strip'
      ? paperTrial(request.hand, request.block, request.options, request.date, request.language)
      : success<Pattern | null>(null);
  if (!paper.ok) return paper;
  const sound = paper.value === null ? paper : validatePattern(paper.value);
  if (!sound.ok) return sound;
  const trial = paper.value;
  const { pattern: strip } = made.value;
  // Each of its files says that there is a paper strip, so that they are drawn again with it.
  const pattern = trial ? { ...strip, paperTrial: trial, inputs: { ...strip.inputs, paperTrial: true } } : strip;
  const drawn = [
    { stem, pattern },
    ...(trial && drawings.length > 0 ? [{ stem: `${stem}-paper`, pattern: trial, formats: drawings }] : []),
  ];
  const [taken = null] = shelf ? takeFromShelf(shelf, [wantedOf(made.value.pattern, stem)]) : [];
  const left = shelf && taken && keepsShelf ? [{ name: SHELF_AFTER, content: shelfText(shelfAfter(shelf, [taken])) }] : [];
  const files = await writePatterns(drawn, output, left);
  if (!files.ok) return files;
  return success({ request, why, report: made.value.report, files: files.value, taken }, [...made.warnings, ...files.warnings]);
}

/** The box of a strip that was drawn. */
function wantedOf({ parts }: Pattern, id: string): Wanted {
  const { minX, maxX, minY, maxY } = boxOf(parts.map(({ outline }) => outline));
  return { id, length: maxX - minX, width: maxY - minY };
}

/** What was taken from the shelf, as data; mm. */
export function takenJson({ wanted, from, cutOff }: Taken): object {
  return { id: wanted.id, from: from?.id ?? null, cutOff: cutOff };
}

/** Why it is drawn, in words; of a plate that was asked for, what it holds. */
function whyInWords(request: PatternRequest, why: WhyDrawn, language: Language): string {
  if (why?.kind === 'redrawn') return terminalSpeech(language).w.why.redrawn(why.file);
  if (why !== null) return sayWhyBlock(why, language);
  return request.kind === 'plate' ? holdsIn(request.plate, speechIn(language)) : '';
}

/** What `draw` and `redraw` print. */
export const drawnReport = {
  text: ({ request, report, why, files, taken }: Drawn): string => {
    const { language = 'en' } = request;
    const because = whyInWords(request, why, language);
    if (request.kind === 'strip' && 'passes' in report) {
      const shelf = taken ? `${takenText(taken, terminalSpeech(language))}\n` : '';
      return `${describeDrawing(report, request.block, because, files, language)}${shelf}`;
    }
    if (request.kind === 'plate' && !('passes' in report))
      return describePlate(report, `${plateName(request.plate, speechIn(language))}, ${because}`, files, language);
    throw new Error('a report of another kind than its request');
  },
  json: ({ request, report, why, files, taken }: Drawn, warnings: readonly Warning[]): object => ({
    ...report,
    why: whyInWords(request, why, 'en'),
    ...(taken ? { shelf: takenJson(taken) } : {}),
    warnings,
    files,
  }),
};
