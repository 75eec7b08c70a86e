import { visible } from '../units/quote.ts';
import type { StepAbout } from './history.ts';
import type { Texts } from './texts/english.ts';
import { fieldName } from './translate-messages.ts';

/** Fields whose value alone says what was changed. */
const VALUE_ALONE = /^(?:block|options|stop|flags|hypermobile|clinicianConfirms|invented|visit|middle)\b/;
const LONGEST = 40;

/** What a step changed, in words: "Ring finger: width 16.5". */
export function stepWords({ where, value }: StepAbout, texts: Texts): string {
  const shown = visible(value.length > LONGEST ? `${value.slice(0, LONGEST)}…` : value);
  if (VALUE_ALONE.test(where)) return shown;
  const digit = /^places\.(\w+)$/.exec(where)?.[1] as keyof Texts['digit'] | undefined;
  const names: Record<string, string> = {
    roundIn: texts.measure.roundIn,
    sizeGroup: texts.measure.averageFor,
    'print.paper': texts.files.paper,
    'plate.faces': texts.plate.faces,
    'plate.digits': texts.plate.digits,
    'plate.bend': texts.plate.bendWay,
  };
  const name = digit && digit in texts.digit ? texts.digit[digit] : (names[where] ?? fieldName(where, texts));
  return `${name} ${shown}`.trim();
}
