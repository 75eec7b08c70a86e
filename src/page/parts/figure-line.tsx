import type { Drawn } from '../derive.ts';
import { useStore } from './store-context.ts';

/** Length and width of the flat piece, in few letters. */
export function FigureLine({ shown }: { readonly shown: Drawn }) {
  const format = useStore().format.value;
  const sizes =
    shown.kind === 'strip'
      ? [[shown.report.flatLength, shown.report.flatWidth] as const]
      : shown.report.faces.map((f) => [f.length, f.width] as const);
  return <>{sizes.map(([length, width]) => `${format.mm(length, 0)} x ${format.mm(width, 0)}`).join(', ')}</>;
}
