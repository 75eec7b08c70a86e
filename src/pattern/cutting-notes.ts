import type { Language } from '../words/language.ts';
import { sheetSpeech } from '../words/sheet-words.ts';
import type { Cutting, Pattern } from './pattern.ts';

/**
 * What is said to the people at the machine, a sentence each; the kerf comes first, also when it is 0 (output rule 11). What a file says of
 * itself is English: `inspect` reads the kerf back from it.
 */
export function cuttingNotes({ cutting }: Pattern, language: Language = 'en'): readonly string[] {
  const { w, number } = sheetSpeech(language);
  const { machine: m } = w;
  if (!cutting) return [m.noKerf];
  const { cutter, title, kerf, leadIn, bridges, bridgeWidth, sharedEdges } = cutting;
  const profile = (m.profile as Readonly<Record<string, string>>)[cutter];
  const own = title === (sheetSpeech('en').w.machine.profile as Readonly<Record<string, string>>)[cutter] ? profile : undefined;
  return [
    kerf === 0 ? m.noKerf : m.kerf(number(kerf, 3), number(kerf / 2, 4)),
    m.cutter(cutter, own ?? title),
    toolOrder(cutting, language),
    ...(leadIn > 0 ? [m.leadIns(number(leadIn, 2))] : []),
    ...(bridges > 0 ? [m.bridges(`${bridges}`, number(bridgeWidth, 2))] : []),
    ...(sharedEdges > 0 ? [m.sharedEdges(`${sharedEdges}`)] : []),
  ];
}

/** The order of the tools in one sentence. */
function toolOrder({ partByPart, layers }: Cutting, language: Language): string {
  return sheetSpeech(language).w.machine.tools(layers.MARK ?? '', layers.CUT, layers.INFO ?? '', partByPart);
}
