import { colourName } from './colour.ts';
import type { Finding, ReadCurve, ReadDrawing } from './drawing.ts';
import { type Role, type RoleRule, roleByName } from './roles.ts';

/** Names that every DXF reader takes. */
const STRICT_NAME = /^[A-Za-z0-9_$-]{1,31}$/;
/** Lines wider than this are areas to a cutter. mm; common practice, no source. */
const WIDEST_STROKE = 1;

/** What is wrong with layers, line styles and texts. */
export function layerFindings(drawing: ReadDrawing, roleOf: (curve: ReadCurve) => Role, rules: readonly RoleRule[]): readonly Finding[] {
  const { format, layers, curves, texts } = drawing;
  const findings: Finding[] = [];
  const drawn = curves.filter((curve) => !curve.hidden);
  const used = new Set([...drawn.map((curve) => curve.layer), ...texts.map((text) => text.layer)]);
  const named = rules.some((rule) => rule.role === 'cut') || [...used].some((name) => roleByName(name) === 'cut');
  if (format !== 'pdf' && drawn.length > 0 && !named) {
    findings.push({
      code: 401,
      message: `no layer says that it is to be cut (${list([...used])}): everything that is no mark is taken as cut`,
    });
  }
  const undeclared = layers.filter((layer) => format === 'dxf' && !layer.declared && layer.name !== '0');
  if (undeclared.length > 0) findings.push({ code: 402, message: `layers used and not declared: ${list(undeclared.map((l) => l.name))}` });
  const odd = layers.filter((layer) => format === 'dxf' && !STRICT_NAME.test(layer.name) && layer.name !== '*ADSK_CONSTRAINTS');
  if (odd.length > 0) findings.push({ code: 403, message: `layer names that strict readers refuse: ${list(odd.map((l) => l.name))}` });
  const hidden = curves.filter((curve) => curve.hidden);
  if (hidden.length > 0) {
    findings.push({
      code: 405,
      message: `${hidden.length} lines are hidden (on ${list(hidden.map((c) => c.layer))}): some machines cut them all the same`,
    });
  }
  const cut = drawn.filter((curve) => roleOf(curve) === 'cut');
  const colours = [...new Set(cut.flatMap((curve) => colourName(curve) ?? []))];
  if (rules.length === 0 && colours.length > 1) {
    findings.push({
      code: 410,
      message: `what is taken as cut has ${colours.length} colours (${list(colours)}): say what each is for, as --roles '${colours[0]}=cut,${colours[1]}=mark'`,
    });
  }
  const bare = drawn.filter((curve) => curve.strokeWidth === 0);
  if (bare.length > 0)
    findings.push({ code: 406, message: `${bare.length} shapes have no stroke, only an area: a cutter that follows strokes sees nothing` });
  const wide = drawn.filter((curve) => (curve.strokeWidth ?? 0) > WIDEST_STROKE);
  if (wide.length > 0)
    findings.push({ code: 407, message: `${wide.length} lines are wider than ${WIDEST_STROKE} mm: some machines take them as areas` });
  const dashed = cut.filter((curve) => curve.dashed);
  if (dashed.length > 0)
    findings.push({ code: 408, message: `${dashed.length} cuts have a dashed line style: machines cut them through, or in pieces` });
  return [...findings, ...textFindings(drawing)];
}

function textFindings({ format, texts, layers, notes }: ReadDrawing): readonly Finding[] {
  const findings: Finding[] = [];
  const [first] = texts;
  // On paper, text is text. A machine needs the font, or leaves it out.
  if (format !== 'pdf' && first) {
    findings.push({
      code: 501,
      message: `${texts.length} texts are text, not strokes (the first is ${JSON.stringify(first.text.slice(0, 40))}): most machines leave them out`,
    });
  }
  const all = [...texts.map((text) => text.text), ...layers.map((layer) => layer.name)];
  if (format === 'dxf' && [...all, ...notes].some((text) => /[^\x20-\x7e\t]/.test(text))) {
    findings.push({
      code: 502,
      message: 'letters outside ASCII stand in texts, names or comments: readers take them by their own code page',
    });
  }
  const control = all.some((text) => /[\p{Cc}\u2028\u2029]|\^J|\\P/u.test(text.trim()));
  if (control) findings.push({ code: 503, message: 'a text holds a line break or a control character' });
  return findings;
}

function list(names: readonly string[]): string {
  const unique = [...new Set(names)];
  const shown = unique.slice(0, 6).map((name) => JSON.stringify(name.slice(0, 40)));
  return `${shown.join(', ')}${unique.length > 6 ? ` and ${unique.length - 6} more` : ''}`;
}
