import { SCREEN_RANGE } from '../state.ts';
import type { View } from './view.ts';

/** ID-1, mm (ISO/IEC 7810); corners between 2.88 and 3.48. */
const CARD = { width: 85.6, height: 53.98, corner: 3.18 };
const STEP = 0.02;

/** Sets the screen's true size by laying a bank card on it. */
export function SizeSection({ view }: { readonly view: View }) {
  const { texts, act, state, format } = view;
  const { cardPixelsPerMm, screen } = state.viewing;
  const isStale = screen !== null && Math.abs(screen.pixelRatio - devicePixelRatio) > 1e-6;
  const change = (by: number) =>
    act.view((now) => ({ cardPixelsPerMm: Math.min(SCREEN_RANGE.to, Math.max(SCREEN_RANGE.from, now.cardPixelsPerMm + by)) }));
  return (
    <details id="size">
      <summary>{texts.size.heading}</summary>
      <p>{texts.size.about}</p>
      <p class="note">{isStale ? texts.size.again : screen ? texts.size.done : texts.size.not}</p>
      <div class="buttons">
        <button type="button" onClick={() => change(-STEP)}>
          {texts.size.smaller}
        </button>
        <button type="button" onClick={() => change(STEP)}>
          {texts.size.larger}
        </button>
        <button
          type="button"
          class="main"
          onClick={() =>
            act.view((now) => ({ screen: { pixelsPerMm: now.cardPixelsPerMm, pixelRatio: devicePixelRatio }, said: texts.size.done }))
          }
        >
          {texts.size.fits}
        </button>
      </div>
      <input
        type="range"
        min={SCREEN_RANGE.from}
        max={SCREEN_RANGE.to}
        step={STEP}
        value={cardPixelsPerMm}
        aria-label={texts.size.slider}
        aria-valuetext={`${format.number(cardPixelsPerMm * CARD.width, 0)} px`}
        onInput={(event) => {
          const value = Number(event.currentTarget.value);
          act.view({ cardPixelsPerMm: value });
        }}
      />
      {/* A wide outline scrolls, and what scrolls must be reachable by keys. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: see above */}
      <section class="scroll" tabIndex={0} aria-label={texts.size.card}>
        <svg
          id="card"
          role="img"
          aria-label={texts.size.card}
          viewBox={`-0.5 -0.5 ${CARD.width + 1} ${CARD.height + 1}`}
          style={{ width: `${(CARD.width + 1) * cardPixelsPerMm}px` }}
        >
          <rect x="0" y="0" width={CARD.width} height={CARD.height} rx={CARD.corner} />
        </svg>
      </section>
    </details>
  );
}
