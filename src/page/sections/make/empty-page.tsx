import { useEffect, useState } from 'preact/hooks';
import exampleHand from '../../../../fixtures/demo-hand.json' with { type: 'json' };
import { readHand } from '../../../hand/read-hand.ts';
import { type Drawn, derive } from '../../derive.ts';
import { entriesOf } from '../../hand-file.ts';
import { focusNext } from '../../parts/focus.ts';
import { Moulded } from '../../parts/moulded-picture.tsx';
import { useStore } from '../../parts/store-context.ts';
import { freshEntries, rewritten } from '../../rewrite-entries.ts';
import type { Entries, Settings } from '../../state.ts';
import type { Store } from '../../store.ts';

/** An empty page says what is made, for whom, shows one worn, and has an example. */
export function EmptyPage() {
  const store = useStore();
  const words = store.texts.value.make;
  return (
    <div class="nothing">
      <p>{words.empty}</p>
      <p>{words.emptyHow}</p>
      <WornExample />
      <button type="button" id="example" onClick={() => showExample(store)}>
        {words.example}
      </button>
    </div>
  );
}

/** How long the page has stood before the example is drawn, ms: it takes as long as several frames, and who knows the page begins at once. */
const REST = 350;
/** What the example's hand comes to; the same whatever the page's unit and language. */
let worn: Drawn | null = null;

/** One that is worn, so that somebody new sees what is made. Looked at, nothing else. */
function WornExample() {
  const store = useStore();
  const [drawn, setDrawn] = useState(worn);
  useEffect(() => {
    if (drawn !== null) return;
    const wait = setTimeout(() => {
      worn = derive(exampleEntries({ language: 'en', unit: 'mm', decimal: '.' }), { unit: 'mm' }).drawn;
      setDrawn(worn);
    }, REST);
    return () => clearTimeout(wait);
  }, []);
  return (
    <figure class="worn">
      <div class="picture-room">{drawn && <Moulded shown={drawn} />}</div>
      <figcaption class="hint">{store.texts.value.make.worn}</figcaption>
    </figure>
  );
}

/** The invented hand as it is typed with these settings, on the usual options. */
function exampleEntries(settings: Settings): Entries {
  const hand = readHand(exampleHand);
  if (!hand.ok) throw new Error('the example hand cannot be read');
  const own = rewritten(entriesOf(hand.value.source, '.'), { unit: 'mm', decimal: '.' }, settings);
  return { ...own, code: 'EXAMPLE-1', example: true, invented: true, options: freshEntries(settings).options };
}

/** An invented hand, so that somebody new sees what is made; what is typed over it stays an example until the page is emptied. */
function showExample(store: Store): void {
  store.replace({ ...exampleEntries(store.settings.peek()), print: store.entries.peek().print }, null);
  store.said.value = store.texts.peek().make.exampleShown;
  focusNext('make-heading');
}
