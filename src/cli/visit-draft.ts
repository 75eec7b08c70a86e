import type { LengthUnit } from '../units/length.ts';
import { plain } from '../units/number.ts';

/** A visit that is being put together, as JSON: every value at its path, checked only when whole. */
export type VisitDraft = Readonly<Record<string, unknown>>;

/** The value at a path of points, e.g. `goniometry.pip.active`; undefined where the path leads nowhere. */
export function draftValue(draft: VisitDraft, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => (isRecord(at) && Object.hasOwn(at, key) ? at[key] : undefined), draft);
}

/** The draft with a value at a path; what stands in the way and is no object is replaced. Paths are ours, never a person's. */
export function withDraftValue(draft: VisitDraft, path: string, value: unknown): VisitDraft {
  const [key = '', ...rest] = path.split('.');
  if (rest.length === 0) return { ...draft, [key]: value };
  const inner = draft[key];
  return { ...draft, [key]: withDraftValue(isRecord(inner) ? inner : {}, rest.join('.'), value) };
}

/**
 * The draft with what a flag or an answer says. A length without a unit of its own is in `units`: the measurements get these units, or the
 * length its own where they have others.
 */
export function withSaid(draft: VisitDraft, path: string, value: unknown, units: LengthUnit): VisitDraft {
  if (!path.startsWith('measures.')) return withDraftValue(draft, path, value);
  const other = draftValue(draft, 'measures.units');
  if (other === undefined) return withDraftValue(withDraftValue(draft, 'measures.units', units), path, value);
  return withDraftValue(draft, path, other !== units && typeof value === 'number' ? `${plain(value, 4)} ${units}` : value);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
