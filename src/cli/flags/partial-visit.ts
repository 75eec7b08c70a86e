import type { LengthUnit } from '../../units/length.ts';
import { plain } from '../../units/number.ts';

/** A visit that is being put together, as JSON: every value at its path, checked only when whole. */
export type PartialVisit = Readonly<Record<string, unknown>>;

/** The value at a path of points, e.g. `goniometry.pip.active`; undefined where the path leads nowhere. */
export function partialValue(draft: PartialVisit, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => (isRecord(at) && Object.hasOwn(at, key) ? at[key] : undefined), draft);
}

/** The draft with a value at a path; what stands in the way and is no object is replaced. Paths are ours, never a person's. */
export function withPartialValue(draft: PartialVisit, path: string, value: unknown): PartialVisit {
  const [key = '', ...rest] = path.split('.');
  if (rest.length === 0) return { ...draft, [key]: value };
  const inner = draft[key];
  return { ...draft, [key]: withPartialValue(isRecord(inner) ? inner : {}, rest.join('.'), value) };
}

/**
 * The draft with what a flag or an answer says. A length without a unit of its own is in `units`: the measurements get these units, or the
 * length its own where they have others.
 */
export function withAnswer(draft: PartialVisit, path: string, value: unknown, units: LengthUnit): PartialVisit {
  if (!path.startsWith('measures.')) return withPartialValue(draft, path, value);
  const other = partialValue(draft, 'measures.units');
  if (other === undefined) return withPartialValue(withPartialValue(draft, 'measures.units', units), path, value);
  return withPartialValue(draft, path, other !== units && typeof value === 'number' ? `${plain(value, 4)} ${units}` : value);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
