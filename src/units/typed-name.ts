const LONGEST_COMPARED = 40;

/**
 * The candidate that the text most probably meant, or null when none is near: letter case ignored, then at most one slip
 * (letter wrong, missing, extra, or two swapped) for every three letters typed.
 */
export function nearest(text: string, candidates: readonly string[]): string | null {
  if (text.length > LONGEST_COMPARED) return null;
  const typed = text.toLowerCase();
  let best: string | null = null;
  let fewest = Math.floor(Math.max(typed.length, 3) / 3) + 1;
  for (const candidate of candidates) {
    const count = slips(typed, candidate.toLowerCase());
    if (count < fewest) {
      fewest = count;
      best = candidate;
    }
  }
  return best;
}

/** What to add to "there is no ...": the candidate that was probably meant, or else all of them after `otherwise`. */
export function didYouMean(text: string, candidates: readonly string[], otherwise: string): string {
  const near = nearest(text, candidates);
  return near === null ? `; ${otherwise} ${candidates.join(', ')}` : `; did you mean ${near}?`;
}

/** Edit distance with swaps of neighbours (optimal string alignment). */
function slips(a: string, b: string): number {
  let twoBack: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min((previous[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (previous[j - 1] ?? 0) + same);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) least = Math.min(least, (twoBack[j - 2] ?? 0) + 1);
      row.push(least);
    }
    twoBack = previous;
    previous = row;
  }
  return previous[b.length] ?? 0;
}

/** `paperMargin` as it is typed in a flag: `paper-margin`. */
export function kebabCase(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
