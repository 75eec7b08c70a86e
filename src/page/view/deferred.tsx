import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { View } from './view.ts';

type Part = ComponentType<{ readonly view: View }>;

interface LaterProps {
  readonly load: () => Promise<Part>;
  readonly view: View;
}

/** A part that is made ready only after the page has been painted: what is far down must not keep the first field from being there. */
export function Deferred({ load, view }: LaterProps) {
  const [part, setPart] = useState<{ readonly of: Part } | null>(null);
  useEffect(() => {
    let isThere = true;
    const soon = setTimeout(() => {
      void load().then((of) => {
        if (isThere) setPart({ of });
      });
    });
    return () => {
      isThere = false;
      clearTimeout(soon);
    };
  }, []);
  if (part === null) return null;
  const Of = part.of;
  return <Of view={view} />;
}
