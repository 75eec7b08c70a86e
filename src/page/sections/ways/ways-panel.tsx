import { PLACES, type Place } from '../../../block/block.ts';
import { DIFFERENTIAL_STEP, SURVEYED_DIFFERENTIAL } from '../../../block/figures.ts';
import type { Suggestion } from '../../../block/plan.ts';
import { SCORE_TERMS, TERM_RULES } from '../../../block/rank-blocks.ts';
import { DIGITS } from '../../../hand/digits.ts';
import { PLATE_FACES } from '../../../pattern/plate/plate-design.ts';
import { BEND_CHOICES } from '../../../pattern/plate/plate-options.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../../pattern/strip/strip-options.ts';
import { arrangementDetail, arrangementTitle } from '../../arrangement-words.ts';
import type { BlockCard } from '../../block-cards.ts';
import { planReason } from '../../block-words.ts';
import { wantsPlate } from '../../derive-plate.ts';
import { Choice } from '../../parts/choice.tsx';
import { Field } from '../../parts/field.tsx';
import { Panel } from '../../parts/panel.tsx';
import { SectionPicture } from '../../parts/section-picture.tsx';
import { Spoken } from '../../parts/spoken.tsx';
import { useStore } from '../../parts/store-context.ts';
import { PLATE_DIGITS } from '../../state.ts';
import { sayProblem } from '../../translate-messages.ts';

/** All ways: as suggested, every strip with what it does well and what it costs, one's own arrangement, plates. */
export function WaysPanel() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.ways;
  const entries = store.entries.value;
  const { plan, cards } = store.derived.value;
  const reason = plan ? planReason(plan, texts) : null;
  const choose = (block: string, title: string) => {
    store.arrange({ where: 'block', value: title }, { block });
    store.commit();
  };
  return (
    <Panel name="ways" heading={words.heading}>
      {reason ? <p>{reason}</p> : null}
      <label class={entries.block === 'auto' ? 'pick chosen' : 'pick'}>
        <input type="radio" name="way" checked={entries.block === 'auto'} onChange={() => choose('auto', words.suggested)} />
        <span>
          {words.suggested} <span class="unit">{words.suggestedHint}</span>
        </span>
      </label>
      <h3>{words.strips}</h3>
      <div class="cards">
        {cards.map((card) => (
          <Card key={card.block.id} card={card} choose={choose} />
        ))}
      </div>
      <h3>{words.ownHeading}</h3>
      <OwnArrangement />
      <h3>{words.plateHeading}</h3>
      <PlateChoice choose={choose} />
      <p class="caution">{texts.caution.evidence}</p>
    </Panel>
  );
}

function Card({ card, choose }: { readonly card: BlockCard; readonly choose: (block: string, title: string) => void }) {
  const store = useStore();
  const texts = store.texts.value;
  const { block, path, problems, suggestion } = card;
  const { derived, entries } = store;
  const checked = entries.value.block !== 'own' && derived.value.block?.id === block.id;
  const title = arrangementTitle(block, texts);
  const options = derived.value.options ?? DEFAULT_STRIP_OPTIONS;
  return (
    <div class={checked ? 'card chosen' : 'card'}>
      <label>
        <span class="card-title">
          <input type="radio" name="way" value={block.id} checked={checked} onChange={() => choose(block.id, title)} />
          <span>{title}</span>
        </span>
        {path ? (
          <SectionPicture path={path} side={entries.value.side === 'right' ? 'right' : 'left'} options={options} texts={texts} small />
        ) : null}
      </label>
      <p class="reason">{arrangementDetail(block, options.differential, texts, store.format.value)}</p>
      {suggestion ? <Reasons suggestion={suggestion} /> : null}
      {problems.map((problem) => (
        <p class="reason refused" key={problem.message}>
          {texts.ways.cannot} <Spoken sentence={sayProblem(problem, store.speaker.value)} />
        </p>
      ))}
    </div>
  );
}

/** Share of a term's points above which a way does well at it, and below which it costs. */
const WELL = 0.85;
const POORLY = 0.5;

/** What it does well, what it costs, its length, and what to try if it does not redirect. */
function Reasons({ suggestion }: { readonly suggestion: Suggestion }) {
  const store = useStore();
  const texts = store.texts.value;
  const format = store.format.value;
  const share = (term: (typeof SCORE_TERMS)[number]) => suggestion.terms[term] / TERM_RULES[term].weight;
  const well = SCORE_TERMS.filter((term) => share(term) >= WELL).map((term) => texts.ways.term[term]);
  const poorly = SCORE_TERMS.filter((term) => share(term) < POORLY).map((term) => texts.ways.cost[term]);
  const larger = Math.min(SURVEYED_DIFFERENTIAL.high, suggestion.differential + DIFFERENTIAL_STEP);
  return (
    <p class="reason">
      {well.length > 0 ? `${texts.ways.good(well.join(', '))} ` : ''}
      {poorly.length > 0 ? `${texts.ways.costs(poorly.join(', '))} ` : ''}
      {texts.block.length(format.mm(suggestion.flatLength))}.{' '}
      {larger > suggestion.differential ? texts.block.nextLarger(format.degrees(larger)) : texts.block.nextMost}
    </p>
  );
}

function OwnArrangement() {
  const store = useStore();
  const texts = store.texts.value;
  const entries = store.entries.value;
  const { block, blockProblems } = store.derived.value;
  const isOwn = entries.block === 'own';
  const places =
    isOwn || !block
      ? entries.places
      : { index: 'out' as const, long: 'out' as const, ring: 'out' as const, little: 'out' as const, ...block.places };
  return (
    <div class="own">
      <p class="hint">{texts.block.ownAbout}</p>
      {DIGITS.map((digit) => (
        <Choice
          key={digit}
          where={`places.${digit}`}
          legend={texts.hand.first[digit]}
          value={places[digit]}
          choices={[...PLACES, 'out' as const].map((place: Place | 'out') => ({
            value: place,
            label: place === 'out' ? texts.out : texts.hand.place[place],
          }))}
          onChoose={(place) =>
            store.arrange(
              { where: `places.${digit}`, value: place === 'out' ? texts.out : texts.hand.place[place] },
              { block: 'own', places: { ...places, [digit]: place } },
            )
          }
        />
      ))}
      <div role="alert">
        {isOwn
          ? blockProblems.map((problem) => (
              <p class="error" key={problem.message}>
                <Spoken sentence={sayProblem(problem, store.speaker.value)} />
              </p>
            ))
          : null}
      </div>
    </div>
  );
}

/** The plate in place of a strip: side, angle and digits; its palm is measured in the middle column. */
function PlateChoice({ choose }: { readonly choose: (block: string, title: string) => void }) {
  const store = useStore();
  const texts = store.texts.value;
  const entries = store.entries.value;
  const { plan } = store.derived.value;
  const planned = plan?.plate?.degrees;
  const format = store.format.value;
  return (
    <div class="own">
      <label class={wantsPlate(entries, plan) ? 'pick chosen' : 'pick'}>
        <input
          type="radio"
          name="way"
          value="plate"
          checked={wantsPlate(entries, plan)}
          onChange={() => choose('plate', texts.plate.choose)}
        />
        <span>{texts.plate.choose}</span>
      </label>
      <p class="hint">{texts.plate.about}</p>
      {plan?.plate ? (
        <p class="note">{texts.block.plate(format.degrees(plan.plate.degrees), format.degreesRange(...plan.plate.range))}</p>
      ) : null}
      <Choice
        where="plate.faces"
        legend={texts.plate.faces}
        value={entries.plate.faces}
        choices={PLATE_FACES.map((value) => ({ value, label: texts.plate.face[value] }))}
        onChoose={(faces) =>
          store.enter({ where: 'plate.faces', value: texts.plate.face[faces] }, ({ plate }) => ({ plate: { ...plate, faces } }))
        }
      />
      <Choice
        where="plate.digits"
        legend={texts.plate.digits}
        value={entries.plate.digits}
        choices={PLATE_DIGITS.map((value) => ({ value, label: texts.plate.digitsOf[value] }))}
        onChoose={(digits) =>
          store.enter({ where: 'plate.digits', value: texts.plate.digitsOf[digits] }, ({ plate }) => ({ plate: { ...plate, digits } }))
        }
      />
      <Choice
        where="plate.bend"
        legend={texts.plate.bendWay}
        value={entries.plate.bend}
        choices={BEND_CHOICES.map((value) => ({ value, label: texts.plate.bendOf[value] }))}
        onChoose={(bend) =>
          store.enter({ where: 'plate.bend', value: texts.plate.bendOf[bend] }, ({ plate }) => ({ plate: { ...plate, bend } }))
        }
      />
      <Field
        where="plate.angle"
        label={texts.plate.angle}
        unit={texts.degrees}
        hint={planned === undefined ? texts.plate.angleAsked : texts.plate.angleHint(format.degrees(planned))}
        numeric
      />
    </div>
  );
}
