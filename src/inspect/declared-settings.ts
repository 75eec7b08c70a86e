/** What a file says of itself in its title, description or comments. Lengths in mm. */
export interface DeclaredSettings {
  /** Null when the file says nothing of a kerf. */
  readonly kerf: number | null;
  readonly leadIn: number;
  /** Width of hold-down bridges in the material; 0 without them. */
  readonly bridge: number;
  /** Edges stand apart as LINE and ARC on purpose. */
  readonly looseEdges: boolean;
  /** Arcs are drawn as short lines on purpose. */
  readonly shortLines: boolean;
  /** Two different kerfs are stated. */
  readonly unclear: boolean;
}

const NUMBER = String.raw`(\d+(?:\.\d+)?)`;

export function declaredSettings(notes: readonly string[]): DeclaredSettings {
  const text = notes.join('\n');
  const kerfs = [...text.matchAll(new RegExp(`\\bkerf ${NUMBER} mm`, 'gi'))].map(([, number]) => Number(number));
  const first = (pattern: string) => Number(new RegExp(pattern, 'i').exec(text)?.[1] ?? 0);
  return {
    kerf: kerfs[0] ?? null,
    leadIn: first(`lead-ins: quarter arcs of ${NUMBER} mm`),
    bridge: first(`bridges: \\d+ of ${NUMBER} mm`),
    looseEdges: /separate LINE and ARC/i.test(text),
    shortLines: /arcs as short lines/i.test(text),
    unclear: new Set(kerfs).size > 1,
  };
}
