import type { RecordWords } from '../words/record/record-words.ts';
import type { Noted } from './case.ts';
import { neutralZero } from './motion-text.ts';

type NotedKey = keyof RecordWords['noted'];

/** What was noted at a visit in the words of a language, a row or a column each, harm first; '' where it was not noted. Comments stand for themselves. */
export function notedRows(
  words: RecordWords,
): readonly { readonly key: NotedKey; readonly heading: string; readonly value: (noted: Noted) => string }[] {
  const number = (value: number | null) => (value === null ? '' : words.number(value));
  const yesNo = (value: boolean | null) => (value === null ? '' : value ? words.yes : words.no);
  const values: { readonly [K in NotedKey]: (noted: Noted) => string } = {
    pain: ({ pain }) => number(pain),
    skin: ({ skin }) => (skin === null ? '' : words.skin[skin]),
    sensation: ({ sensation }) => (sensation === null ? '' : words.change[sensation]),
    colour: ({ colour }) => (colour === null ? '' : words.change[colour]),
    infection: ({ infection }) => yesNo(infection),
    deformity: ({ deformity }) => yesNo(deformity),
    crpsSigns: ({ crpsSigns }) => (crpsSigns === null ? '' : `${crpsSigns.length}`),
    wear: ({ wear }) => number(wear),
    wearAgreed: ({ wearAgreed }) => number(wearAgreed),
    fits: ({ fits }) => yesNo(fits),
    redirects: ({ redirects }) => yesNo(redirects),
    measuredDifferential: ({ measuredDifferential }) => number(measuredDifferential),
    freePip: ({ freePip }) => number(freePip),
    pencil: ({ pencil }) =>
      [pencil?.without, pencil?.with].flatMap((motion) => (motion ? [neutralZero(motion, words.number)] : [])).join(` ${words.and} `),
    closedAt: ({ closedAt }) => number(closedAt),
    rater: ({ rater }) => rater ?? '',
    repeated: ({ repeated }) => yesNo(repeated),
    weaning: ({ weaning }) => yesNo(weaning),
    goal: ({ goal }) => number(goal),
  };
  return (Object.keys(values) as NotedKey[]).map((key) => ({ key, heading: words.noted[key], value: values[key] }));
}
