import type { Severity } from '../inspect/finding-kinds.ts';
import type { Inspection } from '../inspect/inspection.ts';
import { plain } from '../units/number.ts';
import { escapeInvisible, visible } from '../units/quote.ts';

/** Parts that are listed one by one. */
const LISTED = 12;
const LISTED_LAYERS = 40;

/** An inspection in words: what the file is, its parts, and last what was found. */
export function describeInspection(found: Inspection, name: string): string {
  const mm = (value: number) => `${plain(value, 2)} mm`;
  const size = (box: { width: number; height: number } | null) => (box ? `${plain(box.width, 2)} x ${mm(box.height)}` : 'none');
  const version = found.version ? ` ${visible(found.version)}` : '';
  const shown = found.parts.slice(0, LISTED);
  const lines = [
    `${escapeInvisible(name)}: ${found.format.toUpperCase()}${version}, read back`,
    `units       ${found.unit ?? 'none stated'}, one unit is ${plain(found.mmPerUnit, 6)} mm`,
    `page        ${size(found.frame)}`,
    `drawn       ${size(found.size)}`,
    ...found.layers
      .slice(0, LISTED_LAYERS)
      .map(
        (l) =>
          `layer       ${visible(l.name)} (${l.role}): ${l.curves} lines, ${mm(l.length)}${l.colours.length > 0 ? `, ${l.colours.slice(0, 6).join(' ')}` : ''}`,
      ),
    ...(found.layers.length > LISTED_LAYERS ? [`layer       and ${found.layers.length - LISTED_LAYERS} more`] : []),
    `parts       ${found.parts.length}, from ${found.closedContours} closed contours, ${found.openContours} open`,
    ...shown.map((p, k) => `part ${String(k + 1).padEnd(7)}${size(p)}, ${p.holes} holes, cut ${mm(p.cutLength)}`),
    ...(found.parts.length > LISTED ? [`part        and ${found.parts.length - LISTED} more`] : []),
    `kerf        ${found.kerf === null ? 'not stated' : mm(found.kerf)}`,
    `edges       ${found.lines} straight, ${found.arcs} arcs, ${found.flattened} other curves (read within ${plain(found.flatteningError, 3)} mm)`,
    `shortest    ${found.shortestEdge === null ? 'nothing is cut' : `${plain(found.shortestEdge, 3)} mm of cut edge`}`,
    `length      cut ${mm(found.cutLength)}, marked ${mm(found.markLength)}`,
    `texts       ${found.texts}`,
    ...found.findings.map(
      (f) => `${f.severity.padEnd(5)} ${f.code} ${escapeInvisible(f.message)}${f.at ? ` (at ${plain(f.at.x)}, ${plain(f.at.y)})` : ''}`,
    ),
    summary(found.findings),
  ];
  return `${lines.join('\n')}\n`;
}

/** What the findings come to, the gravest first. */
function summary(findings: Inspection['findings']): string {
  if (findings.length === 0) return 'nothing found wrong';
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  const parts = [
    [count('stop'), 'to stop at: do not cut this file'],
    [count('look'), 'to look at'],
    [count('note'), 'to note'],
  ] as const;
  return parts
    .filter(([n]) => n > 0)
    .map(([n, words]) => `${n} ${words}`)
    .join('; ');
}
