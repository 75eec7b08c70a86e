import { plain } from '../../units/number.ts';
import type { Problem } from '../../units/result.ts';
import { capital } from '../../words/hand-words.ts';
import { NUMBER_OPTIONS, type StripOptions, type StripSettings } from './strip-options.ts';

/** Refusals of a path that another choice may mend. */
export const OFFERED: readonly string[] = ['HOLDS_NOTHING', 'NO_PATH', 'PATH_UNSOUND'];

/** Thicknesses of thinner sheet that is sold: 1/16 and 3/64 in (trade sizes, common practice), mm; and widths that are tried. */
const THINNER = [1.6, 1.2] as const;
const NARROWER = [15, 12, 10, 8] as const;

const least = (key: 'differential' | 'minimumWidth') => NUMBER_OPTIONS.find((o) => o.key === key)?.low ?? 1;

/**
 * The same refusals with one change that was tried and holds: the largest whole differential, else thinner sheet, else a narrower strip; where
 * none of them helps, that is said. `limit` is the differential.
 */
export function offerWith(
  problems: readonly Problem[],
  holds: (changes: Partial<StripSettings>) => boolean,
  { differential, thickness, width }: Pick<StripSettings, 'differential' | 'thickness' | 'width'>,
): readonly Problem[] {
  const add = (words: string, more: Partial<Problem> = {}) => problems.map((p) => ({ ...p, ...more, message: `${p.message} ${words}` }));
  for (let smaller = Math.ceil(differential) - 1; smaller >= least('differential'); smaller--)
    if (holds({ differential: smaller })) return add(`At ${plain(smaller)} degrees it holds.`, { where: 'differential', limit: smaller });
  const thinner = THINNER.find((mm) => mm < thickness && holds({ thickness: mm }));
  if (thinner !== undefined) return add(`Of sheet ${plain(thinner)} mm thick it holds.`);
  const narrower = NARROWER.find((mm) => mm < width && holds({ width: mm, minimumWidth: Math.min(mm, least('minimumWidth')) }));
  if (narrower !== undefined) return add(`With a strip ${plain(narrower)} mm wide it holds.`);
  return add(
    'No smaller differential, thinner sheet or narrower strip was found that helps: measure width and circumference of each digit again.',
  );
}

/** The refusal of a strip that is bent too much with a change that was tried: a strip that is narrower, but not under a least width that was asked for, else one for fingers that do not taper. */
export function offerStraighter(
  problem: Problem,
  holds: (width: number) => boolean,
  holdsUntapered: () => boolean,
  { width, minimumWidth }: Pick<StripSettings, 'width'> & Pick<StripOptions, 'minimumWidth'>,
): Problem {
  const least = minimumWidth === 'auto' ? 0 : minimumWidth;
  const narrower = NARROWER.find((mm) => mm < width && mm >= least && holds(mm));
  if (narrower !== undefined) return { ...problem, message: `${problem.message} A strip ${plain(narrower)} mm wide can be drawn.` };
  const words = holdsUntapered()
    ? 'Without root circumferences it can be drawn.'
    : 'Without root circumferences it cannot be drawn either: measure the web setbacks again.';
  return { ...problem, message: `${problem.message} ${words}` };
}

/**
 * The refusal of a paper strip's reading with what was tried: the nearest reading that can be, to know one when it is read again; else that the
 * strip can be drawn without one. A reading is never to be changed to fit, so measuring stands first.
 */
export function offerReading(problem: Problem, holds: (changes: Pick<StripOptions, 'paperReading'>) => boolean): Problem {
  const { limit, ...refused } = problem;
  const { low = 0, high = 0 } = NUMBER_OPTIONS.find((o) => o.key === 'paperReading') ?? {};
  if (limit !== undefined && limit >= low && limit <= high && holds({ paperReading: limit }))
    return { ...problem, message: `${problem.message} The nearest reading that can be is ${plain(limit)} mm.` };
  if (holds({ paperReading: 'none' }))
    return { ...refused, message: `${problem.message} Without a reading (none) the strip can be drawn.` };
  return { ...refused, message: `${problem.message} Without a reading the strip cannot be drawn either.` };
}

/** The refusal of a paper strip where the strip itself can be drawn: the largest whole differential at which both can be; and that no trial need be made. */
export function offerPaper(
  problem: Problem,
  both: (differential: number) => boolean,
  { differential }: Pick<StripSettings, 'differential'>,
): Problem {
  const without = 'without a paper strip the strip can be drawn';
  for (let smaller = Math.ceil(differential) - 1; smaller >= least('differential'); smaller--)
    if (both(smaller))
      return {
        ...problem,
        where: 'differential',
        message: `${problem.message} At ${plain(smaller)} degrees it holds; ${without}.`,
        limit: smaller,
      };
  return { ...problem, message: `${problem.message} ${capital(without)}.` };
}
