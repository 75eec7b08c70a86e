import type { Derived } from '../derive.ts';
import type { Page } from '../store.ts';
import { elementId, fieldOf, type Sentence, type Speaker, sayProblem } from '../translate-messages.ts';

/** A problem as it is shown: at which field, in which words. */
export interface Fault {
  readonly field: string;
  readonly sentence: Sentence;
}

/** The page with what is common to all views. */
export interface View extends Page {
  readonly speaker: Speaker;
  readonly faults: readonly Fault[];
}

export function viewOf(page: Page): View {
  const speaker: Speaker = { texts: page.texts, format: page.format, entries: page.state.entries };
  return { ...page, speaker, faults: faultsOf(page.derived, speaker) };
}

function faultsOf(derived: Derived, speaker: Speaker): readonly Fault[] {
  const faults: Fault[] = [];
  for (const problem of derived.problems) {
    const fault = { field: fieldOf(problem.where, speaker.entries), sentence: sayProblem(problem, speaker) };
    if (!faults.some((f) => f.field === fault.field && f.sentence.text === fault.sentence.text)) faults.push(fault);
  }
  return faults;
}

/** The problem to show at a field: after it was left with something in it, or after a check. */
export function faultAt(view: View, field: string): Fault | undefined {
  const { checked, left } = view.state.viewing;
  if (!checked && !left.includes(field)) return undefined;
  return view.faults.find((fault) => fault.field === field);
}

/** Moves the focus once the page has been drawn anew. */
export function focusNext(id: string): void {
  requestAnimationFrame(() => {
    const element = document.getElementById(id);
    element?.focus();
    element?.scrollIntoView({ block: 'nearest' });
  });
}

/** Checks the very last entries. Problems are shown and their summary takes the focus; null then, else the page as it is now. */
export function checkAll(view: View): Page | null {
  const now = view.act.settle();
  if (now.derived.problems.length === 0) return now;
  view.act.view({ checked: true });
  focusNext('errors');
  return null;
}

export function focusField(field: string): void {
  const element = document.getElementById(elementId(field));
  const hidden = element?.closest('details:not([open])');
  if (hidden instanceof HTMLDetailsElement) hidden.open = true;
  element?.focus();
}
