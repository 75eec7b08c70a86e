import { useComputed } from '@preact/signals';
import type { Block } from '../../../block/block.ts';
import { DIGITS, type DigitName } from '../../../hand/digits.ts';
import { sayPlanNote } from '../../../words/advice/plan/say-plan.ts';
import { capital } from '../../../words/hand-words.ts';
import { arrangementDetail, arrangementTitle, plateAngleText } from '../../arrangement-words.ts';
import { wantsPlate } from '../../derive-plate.ts';
import { unmeasuredEnd } from '../../hand-file.ts';
import { halfMotionWords } from '../../looks.ts';
import { PanelButton } from '../../parts/panel.tsx';
import { Spoken } from '../../parts/spoken.tsx';
import { useStore } from '../../parts/store-context.ts';
import { sayProblem } from '../../translate-messages.ts';

const LIFT = { enclosed: 0, raised: -3.5, lowered: 3.5 } as const;

/** The fingers end-on as small rings, higher or lower as they are held, the treated one filled; words stand beside it. */
function ArrangementSketch({
  places,
  side,
  treated,
}: {
  readonly places: Block['places'];
  readonly side: 'left' | 'right' | '';
  readonly treated: DigitName | '';
}) {
  const order = side === 'right' ? DIGITS.toReversed() : DIGITS;
  return (
    <svg class="sketch" viewBox="0 0 60 24" aria-hidden="true">
      {order.map((digit, k) => {
        const place = places[digit];
        const look = place === undefined ? 'out' : digit === treated ? 'treated' : 'in';
        return <circle key={digit} class={look} cx={9 + 14 * k} cy={12 + (place ? LIFT[place] : 0)} r="6.4" />;
      })}
    </svg>
  );
}

/** At most so many stand beside each other in turn 1; the others are a press away. */
const MOST = 3;

/** The first suggestions in the plan's order, each with its sentence; the first is chosen until the person chooses. */
export function Suggestions() {
  const store = useStore();
  const plan = useComputed(() => store.derived.value.plan).value;
  const average = useComputed(() => store.derived.value.missing.some((where) => where.startsWith('digits.'))).value;
  const texts = store.texts.value;
  const words = texts.suggestions;
  return (
    <fieldset class="plain suggestions" id="field-block" tabIndex={-1}>
      <legend id="suggestions-heading" tabIndex={-1}>
        {words.heading}
        {plan && average ? <span class="unit"> ({words.onAverage})</span> : null}
      </legend>
      <List />
      {plan === null ? <NothingYet /> : null}
      <PanelButton name="ways" class="wide">
        {words.ways}
      </PanelButton>
    </fieldset>
  );
}

/** Why nothing is suggested: a stop sign, an end of the motion that all hangs on, or nothing said yet. */
function NothingYet() {
  const store = useStore();
  const texts = store.texts.value;
  const entries = store.entries.value;
  const half = unmeasuredEnd(entries) === null ? null : halfMotionWords(entries, texts);
  return <p class="hint">{entries.stop === 'some' ? texts.stop.stopped : half ? `${capital(half)}.` : texts.suggestions.nothingYet}</p>;
}

function List() {
  const store = useStore();
  const texts = store.texts.value;
  const format = store.format.value;
  const words = texts.suggestions;
  const entries = store.entries.value;
  const { plan, block, blockProblems } = store.derived.value;
  const isPlate = entries.stop !== 'some' && wantsPlate(entries, plan);
  const planned = plan?.suggestions ?? [];
  const isPlanned = block !== null && planned.some((s) => s.block.id === block.id);
  const others = planned.slice(0, MOST - (plan?.plate || isPlate ? 1 : 0));
  const chosenElsewhere = !isPlate && block !== null && !others.some((s) => s.block.id === block.id);
  const rows: {
    readonly id: string;
    readonly chosen: boolean;
    readonly title: string;
    readonly detail: string;
    readonly places: Block['places'];
  }[] = [];
  if (plan?.plate || isPlate) {
    const angle = plateAngleText(entries, plan, format);
    const face = texts.plate.face[entries.plate.faces];
    rows.push({
      id: 'plate',
      chosen: isPlate,
      title: angle === null ? words.plateUnknown(face) : words.plate(face, angle),
      detail: words.plateSecond,
      places: { index: 'enclosed', long: 'enclosed', ring: 'enclosed', little: 'enclosed' },
    });
  }
  for (const suggestion of others) {
    rows.push({
      id: suggestion.block.id,
      chosen: !isPlate && block?.id === suggestion.block.id,
      title: arrangementTitle(suggestion.block, texts),
      detail: arrangementDetail(suggestion.block, suggestion.differential, texts, format),
      places: suggestion.block.places,
    });
  }
  if (chosenElsewhere && block)
    rows.push({
      id: entries.block,
      chosen: true,
      title: arrangementTitle(block, texts),
      detail: isPlanned ? '' : words.chosenByYou,
      places: block.places,
    });
  return (
    <>
      {rows.map((row) => (
        <label class={row.chosen ? 'suggestion chosen' : 'suggestion'} key={row.id}>
          <input
            type="radio"
            name="block"
            value={row.id}
            checked={row.chosen}
            onChange={() => store.arrange({ where: 'block', value: row.title }, { block: row.id })}
            onBlur={() => store.commit()}
          />
          <ArrangementSketch places={row.places} side={entries.side} treated={entries.target} />
          <span class="suggestion-words">
            <span class="first">{row.title}</span>
            <span class="second">{row.detail}</span>
          </span>
        </label>
      ))}
      {rows.length === 0
        ? blockProblems.map((problem) => {
            // What the plan notes has words in each language; a problem of that name would repeat it in the command's.
            const note = plan?.notes.find(({ rule }) => rule === problem.code);
            return (
              <p class="note" key={problem.code}>
                {note ? sayPlanNote(note, store.settings.value.language) : <Spoken sentence={sayProblem(problem, store.speaker.value)} />}
              </p>
            );
          })
        : null}
    </>
  );
}
