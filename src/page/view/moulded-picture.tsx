import { heldPlace } from '../../block/block.ts';
import { degrees } from '../../units/angle.ts';
import { plain } from '../../units/number.ts';
import type { DrawnStrip } from '../derive.ts';
import { type Facet, mouldedView } from '../moulded-view.ts';
import { FRONT } from '../state.ts';
import type { View } from './view.ts';

const STEP = 15;
const HIGHEST = 90;

/** The strip round simple fingers, turned by buttons and by the arrow keys. */
export function MouldedPicture({ view, shown }: { readonly view: View; readonly shown: DrawnStrip }) {
  const { texts, act, state, format } = view;
  const { turn } = state.viewing;
  const moulded = mouldedView(shown.figures, shown.hand, turn);
  const { sections } = shown.figures.path.hand;
  const mean = heldPlace(shown.block) === 'raised' ? Math.max : Math.min;
  const straight = mean(...sections.map((s) => s.theta));
  const angles = sections.map((s) => {
    const angle = degrees(s.theta - straight);
    const bend = Math.abs(angle) < 0.05 ? texts.pattern.bendNone : angle > 0 ? texts.pattern.bendFlexion : texts.pattern.bendExtension;
    return texts.pattern.mouldedDigit(texts.digit[s.digit], format.number(Math.abs(angle), 0), bend);
  });
  const move = (across: number, up: number) => {
    act.view((now) => {
      const next = {
        across: ((now.turn.across + across + 540) % 360) - 180,
        up: Math.min(HIGHEST, Math.max(-HIGHEST, now.turn.up + up)),
      };
      return { turn: next, said: texts.status.turned(next.across, next.up) };
    });
  };
  const home = () => act.view({ turn: FRONT, said: texts.status.turned(FRONT.across, FRONT.up) });
  const keys: Readonly<Record<string, () => void>> = {
    ArrowLeft: () => move(-STEP, 0),
    ArrowRight: () => move(STEP, 0),
    ArrowUp: () => move(0, STEP),
    ArrowDown: () => move(0, -STEP),
    Home: home,
  };
  return (
    <fieldset
      class="moulded-frame plain"
      aria-labelledby="moulded-heading"
      aria-describedby="turn-keys"
      onKeyDown={(event) => {
        const act = keys[event.key];
        if (!act) return;
        event.preventDefault();
        act();
      }}
    >
      <h3 id="moulded-heading">{texts.pattern.moulded}</h3>
      <svg
        class="moulded"
        viewBox={[moulded.minX, moulded.minY, moulded.width, moulded.height].map((n) => plain(n, 2)).join(' ')}
        role="img"
        aria-labelledby="moulded-title moulded-description"
      >
        <title id="moulded-title">{texts.pattern.moulded}</title>
        <desc id="moulded-description">{texts.pattern.mouldedDescription(angles.join('; '))}</desc>
        {runs(moulded.facets).map(({ name, data }, k) => (
          // The order is the picture: nearer shapes lie over farther ones, and a shape has no name of its own.
          <path key={k} class={name} d={data} />
        ))}
      </svg>
      <p class="hint" id="turn-keys">
        {texts.pattern.turnKeys}
      </p>
      <div class="buttons">
        <button type="button" onClick={() => move(-STEP, 0)}>
          {texts.pattern.turn.left}
        </button>
        <button type="button" onClick={() => move(STEP, 0)}>
          {texts.pattern.turn.right}
        </button>
        <button type="button" onClick={() => move(0, STEP)}>
          {texts.pattern.turn.up}
        </button>
        <button type="button" onClick={() => move(0, -STEP)}>
          {texts.pattern.turn.down}
        </button>
        <button type="button" onClick={home}>
          {texts.pattern.turn.home}
        </button>
      </div>
    </fieldset>
  );
}

/** Facets that follow each other with the same look, as one path each: fewer elements, the same picture. */
function runs(facets: readonly Facet[]): readonly { readonly name: string; readonly data: string }[] {
  const list: { name: string; data: string }[] = [];
  for (const { kind, shade, points } of facets) {
    const name = `${kind} shade-${shade}`;
    const data = `M${points.map((p) => `${plain(p.x, 1)} ${plain(p.y, 1)}`).join('L')}Z`;
    const last = list.at(-1);
    if (last?.name === name) last.data += data;
    else list.push({ name, data });
  }
  return list;
}
