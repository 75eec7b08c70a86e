import { quote } from '../units/quote.ts';
import { failure, type Problem, type Result, success } from '../units/result.ts';
import { hexOf } from './colour.ts';
import type { ReadCurve, ReadDrawing } from './drawing.ts';

/** What a machine does with a line. */
export const ROLES = ['cut', 'mark', 'info'] as const;
export type Role = (typeof ROLES)[number];

/** Lines of one colour or layer and what they are for, as the person says. `aci` is the colour number of DXF, 1 to 255. */
export type RoleRule = { readonly role: Role } & (
  | { readonly by: 'colour'; readonly hex: string }
  | { readonly by: 'layer'; readonly name: string }
  | { readonly by: 'aci'; readonly number: number }
);

/** Words in layer names of many shops and languages. Common practice, no source. */
const WORDS: readonly (readonly [Role, RegExp])[] = [
  ['info', /info|note|dimension|guide|construct|defpoints|frame|page|title/i],
  ['mark', /mark|score|engrav|etch|pen|draw|plot|fold|crease|text|label|gravur|gravure|incis/i],
  ['cut', /cut|outline|contour|kontur|schnitt|schneid|d[eé]coup|corte|taglio|snij|sk[aä]r/i],
];

/** What the words in a layer's name say that it is for; undefined when they say nothing. */
export function roleByName(name: string): Role | undefined {
  return WORDS.find(([, words]) => words.test(name))?.[0];
}

/**
 * What each line is for: by the first rule that fits it, else by its layer's name. Where neither a rule nor a name says that anything is to be
 * cut, whatever is not known to be a mark or information is taken as cut; paper (PDF) is not cut at all then.
 */
export function rolesOf(drawing: ReadDrawing, rules: readonly RoleRule[] = []): (curve: ReadCurve) => Role {
  const names = [...new Set([...drawing.layers.map((layer) => layer.name), ...drawing.curves.map((curve) => curve.layer)])];
  const byName = new Map(names.map((name) => [name, roleByName(name)]));
  const hasCut = [...byName.values()].includes('cut') || rules.some((rule) => rule.role === 'cut');
  const otherwise: Role = hasCut || drawing.format === 'pdf' ? 'mark' : 'cut';
  return (curve) => rules.find((rule) => fits(rule, curve))?.role ?? byName.get(curve.layer) ?? otherwise;
}

function fits(rule: RoleRule, { layer, colour }: ReadCurve): boolean {
  if (rule.by === 'layer') return rule.name === layer;
  return rule.by === 'aci' ? colour?.aci === rule.number : colour?.hex === rule.hex;
}

/** So many words that are no rule are told one by one. */
const MOST_TOLD = 10;

/** Rules as they are typed, `#f00=cut,layer:SCORE=mark,aci:5=mark`; fails with a problem for each that cannot be read. */
export function readRoleRules(text: string, where: string): Result<readonly RoleRule[]> {
  const rules: RoleRule[] = [];
  const problems: Problem[] = [];
  for (const word of text.split(',').map((one) => one.trim())) {
    const equals = word.lastIndexOf('=');
    const role = ROLES.find(
      (one) =>
        one ===
        word
          .slice(equals + 1)
          .trim()
          .toLowerCase(),
    );
    const rule = equals > 0 && role ? readRule(word.slice(0, equals).trim(), role) : null;
    if (rule) rules.push(rule);
    else {
      const message = `${quote(word)} is no rule; write colour, layer or DXF colour number and what it is for (${ROLES.join(', ')}), as #f00=cut,layer:SCORE=mark,aci:5=mark`;
      problems.push({ code: 'ROLE', kind: 'input', message, where });
    }
  }
  if (problems.length === 0) return success(rules);
  const more = problems.length - MOST_TOLD;
  const rest: Problem = { code: 'ROLE', kind: 'input', message: `and ${more} more that are no rule; correct those first`, where };
  return failure(...problems.slice(0, MOST_TOLD), ...(more > 0 ? [rest] : []));
}

function readRule(which: string, role: Role): RoleRule | null {
  if (/^layer:./i.test(which)) return { by: 'layer', name: which.slice('layer:'.length), role };
  const number = /^aci:(\d{1,3})$/i.exec(which)?.[1];
  if (number !== undefined) return Number(number) >= 1 && Number(number) <= 255 ? { by: 'aci', number: Number(number), role } : null;
  const hex = hexOf(which);
  return hex === null ? null : { by: 'colour', hex, role };
}
