/** Version of a strip's geometry. The first one can still be drawn, for files that were made with it. */
export type GeometryVersion = '1' | '2';

/** Raised whenever the same inputs give another outline; the CHANGELOG says by how many mm. */
export const GEOMETRY_VERSION: GeometryVersion = '2';

/** The version that a file names, or the present one where this program knows no such version. */
export function knownVersion(text: unknown): GeometryVersion {
  return text === '1' ? '1' : GEOMETRY_VERSION;
}
