import { PatternPicture } from '../../parts/pattern-picture.tsx';
import { useStore } from '../../parts/store-context.ts';

/** What the browser's own printing gives: the drawing struck through, and which button prints. A browser's scale is never relied on. */
export function Printout() {
  const store = useStore();
  const texts = store.texts.value;
  const shown = store.shown.value;
  return (
    <div class="printout" aria-hidden="true">
      <p class="not-scale">{texts.make.notScale}</p>
      <p>{texts.make.printHere}</p>
      {shown ? (
        <div class="struck">
          <PatternPicture pattern={shown.pattern} whole={false} title="" description="" pixelsPerMm={null} zoom={1} id="printout-picture" />
          <svg class="strike" aria-hidden="true" viewBox="0 0 100 100" preserveAspectRatio="none">
            <path d="M0 0 L100 100 M0 100 L100 0" />
          </svg>
        </div>
      ) : null}
      <p class="not-scale">{texts.make.notScale}</p>
    </div>
  );
}
