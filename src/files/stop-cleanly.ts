/**
 * What must be undone when the program is stopped by Ctrl+C (SIGINT) or asked to end (SIGTERM). Signals are listened to only while there is
 * something to undo, so that a long computation with nothing on the disk ends at once.
 */

const SIGNALS = ['SIGINT', 'SIGTERM'] as const;

const undoings = new Set<() => void>();
let unstoppable = 0;
let asked: NodeJS.Signals | null = null;

/**
 * Has `undo` called when the program is stopped before the returned function is. It runs while the process ends, so it must not wait for
 * anything.
 */
export function undoWhenStopped(undo: () => void): () => void {
  if (undoings.size === 0) for (const signal of SIGNALS) process.on(signal, stop);
  undoings.add(undo);
  return () => {
    if (undoings.delete(undo) && undoings.size === 0) for (const signal of SIGNALS) process.off(signal, stop);
  };
}

/** Runs work that is short and must not be left half done: a signal that comes meanwhile stops the program after it. */
export async function unstopped<T>(work: () => Promise<T>): Promise<T> {
  const release = undoWhenStopped(() => {});
  unstoppable++;
  try {
    return await work();
  } finally {
    unstoppable--;
    if (asked !== null && unstoppable === 0) end(asked);
    release();
  }
}

function stop(signal: NodeJS.Signals): void {
  if (unstoppable > 0) asked = signal;
  else end(signal);
}

/** Ends as the signal would have ended the program: a shell sees 130 or 143, and a loop around it ends too. */
function end(signal: NodeJS.Signals): void {
  for (const undo of undoings) {
    try {
      undo();
    } catch {
      // The next run clears what cannot be undone now.
    }
  }
  undoings.clear();
  for (const each of SIGNALS) process.off(each, stop);
  process.kill(process.pid, signal);
}
