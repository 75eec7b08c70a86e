import { Panel } from '../../parts/panel.tsx';
import { useStore } from '../../parts/store-context.ts';
import { FiguresTable, MarksTable, PlateTable } from './pattern-tables.tsx';

/** Every figure of the result: what the pictures show, in words, so that one can work with a ruler alone. */
export function FiguresPanel() {
  const store = useStore();
  const shown = store.shown.value;
  const texts = store.texts.value;
  return (
    <Panel name="figures" heading={texts.pattern.figures}>
      {shown === null ? <p>{texts.make.nothing}</p> : null}
      {shown?.kind === 'strip' ? (
        <>
          <FiguresTable shown={shown} />
          <MarksTable shown={shown} />
        </>
      ) : null}
      {shown?.kind === 'plate' ? <PlateTable shown={shown} /> : null}
      <p class="caution">{texts.caution.model}</p>
    </Panel>
  );
}
