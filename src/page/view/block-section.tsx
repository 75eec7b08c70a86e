import { useState } from 'preact/hooks';
import { PLACES, type Place } from '../../block/block.ts';
import { DIFFERENTIAL_STEP, SURVEYED_DIFFERENTIAL } from '../../block/differential.ts';
import type { Plan, Suggestion } from '../../block/plan.ts';
import { SCORE_TERMS, type ScoreTerm, TERM_RULES } from '../../block/score-terms.ts';
import { DIGITS } from '../../hand/digits.ts';
import { PALM_FIELDS, type PalmFieldId } from '../../hand/fields.ts';
import { PLATE_FACES } from '../../pattern/plate/plate-design.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../pattern/strip/strip-options.ts';
import { sayPlanNote, sayReason } from '../../words/advice/plan/say-plan.ts';
import type { BlockCard } from '../block-cards.ts';
import { blockTitle, planReason } from '../block-words.ts';
import { wantsPlate } from '../derive-plate.ts';
import { PLATE_DIGITS } from '../state.ts';
import { elementId, sayProblem } from '../translate-messages.ts';
import { Choice, Field, Spoken } from './field.tsx';
import { SectionPicture } from './section-picture.tsx';
import type { View } from './view.ts';

/** Points of a block that meets every term in full. */
const BEST = SCORE_TERMS.reduce((sum, term) => sum + TERM_RULES[term].weight, 0);

/** Ranked blocks with section and reason, all others, and one's own, digit by digit. */
export function BlockSection({ view }: { readonly view: View }) {
  const { texts, act, derived, state } = view;
  const suggested = derived.cards.filter((card) => card.rank !== null);
  const others = derived.cards.filter((card) => card.rank === null);
  const isOwn = state.entries.block === 'own';
  const isPlateSuggested = derived.plan !== null && derived.plan.plate !== null;
  const needsOthers = (suggested.length === 0 && !isPlateSuggested) || others.some((card) => card.block.id === derived.block?.id);
  const [opened, setOpened] = useState<boolean | null>(null);
  const isOpen = opened ?? needsOthers;
  return (
    <section id="block" aria-labelledby="block-heading">
      <h2 id="block-heading" tabIndex={-1}>
        <span class="step" aria-hidden="true">
          3
        </span>
        {texts.block.heading}
      </h2>
      <p>{texts.block.about}</p>
      {derived.plan ? (
        <PlanWords view={view} plan={derived.plan} />
      ) : (
        <p class="note">{!derived.hand.ok && state.entries.target !== '' ? texts.block.waiting : texts.block.noneFits}</p>
      )}
      {derived.cards.some((card) => card.average) ? <p class="hint">{texts.block.averageHand}</p> : null}
      <fieldset class="choice" id={elementId('block')} tabIndex={-1}>
        <legend class="hidden">{texts.block.heading}</legend>
        {isPlateSuggested ? <PlateChoice view={view} /> : null}
        <div class="cards">
          {suggested.map((card) => (
            <Card view={view} card={card} key={card.block.id} />
          ))}
        </div>
        <button type="button" class="quiet" aria-expanded={isOpen} onClick={() => setOpened(!isOpen)}>
          <span aria-hidden="true">{isOpen ? '▾' : '▸'} </span>
          {texts.block.others}
        </button>
        {isOpen ? (
          <div class="cards">
            {others.map((card) => (
              <Card view={view} card={card} key={card.block.id} />
            ))}
          </div>
        ) : null}
        <label class="pick">
          <input
            type="radio"
            name="block"
            value="own"
            checked={isOwn}
            onChange={() => {
              const from = derived.block?.places;
              act.enter(({ places }) => ({
                block: 'own',
                places: from ? { index: 'out', long: 'out', ring: 'out', little: 'out', ...from } : places,
              }));
            }}
          />
          <span>{texts.block.own}</span>
        </label>
        {isOwn ? <OwnBlock view={view} /> : null}
        {isPlateSuggested ? null : <PlateChoice view={view} />}
      </fieldset>
      <p class="caution">
        {texts.caution.evidence} {texts.caution.licensed}
      </p>
    </section>
  );
}

/** What the plan says as a whole: need, cautions, why nothing is suggested, the plate's angle. */
function PlanWords({ view, plan }: { readonly view: View; readonly plan: Plan }) {
  const { texts, act, state, format, speaker, derived } = view;
  const reason = planReason(plan, texts);
  const { language } = state.settings;
  const careful = plan.notes.filter(({ level }) => level !== 'note').map((note) => sayPlanNote(note, language));
  const problems = derived.blockProblems.filter(({ code }) => !plan.notes.some(({ rule }) => rule === code));
  const mayConfirm = plan.refusals.some((r) => r.code === 'HARD_END_FEEL' || r.code === 'UNPROTECTED_REPAIR');
  return (
    <>
      {reason ? <p>{reason}</p> : null}
      {careful.length > 0 ? (
        <div class="warnings">
          <h3>{texts.block.careful}</h3>
          <ul>
            {careful.map((said) => (
              <li key={said}>{said}</li>
            ))}
          </ul>
        </div>
      ) : null}
      {plan.notes
        .filter(({ level }) => level === 'note')
        .map((note) => (
          <p class="note" key={note.rule}>
            {sayPlanNote(note, language)}
          </p>
        ))}
      {state.entries.block === 'auto'
        ? problems.map((problem) => (
            <p class="note" key={problem.code}>
              <Spoken sentence={sayProblem(problem, speaker)} />
            </p>
          ))
        : null}
      {mayConfirm || state.entries.clinicianConfirms ? (
        <label class="pick wide">
          <input
            type="checkbox"
            checked={state.entries.clinicianConfirms}
            onChange={(event) => {
              const clinicianConfirms = event.currentTarget.checked;
              act.enter(() => ({ clinicianConfirms }));
            }}
          />
          <span>{texts.block.confirm}</span>
        </label>
      ) : null}
      {plan.plate ? (
        <p class="note">{texts.block.plate(format.degrees(plan.plate.degrees), format.degreesRange(...plan.plate.range))}</p>
      ) : null}
      {plan.suggestions.length > 0 ? <p class="caution">{texts.caution.pencil}</p> : null}
    </>
  );
}

/** The plate in place of a block: side, angle and the whole hand's measurements. */
function PlateChoice({ view }: { readonly view: View }) {
  const { texts, act, derived, state, format } = view;
  const { plan } = derived;
  const isPlate = wantsPlate(state.entries, plan);
  const planned = plan?.plate?.degrees;
  return (
    <>
      <label class="pick wide">
        <input type="radio" name="block" value="plate" checked={isPlate} onChange={() => act.enter(() => ({ block: 'plate' }))} />
        <span>
          {planned === undefined ? null : <strong>{texts.plate.suggested}: </strong>}
          {texts.plate.choose}
        </span>
      </label>
      {isPlate ? (
        <div class="own">
          <p class="hint">{texts.plate.about}</p>
          <Choice
            view={view}
            where="plate.faces"
            legend={texts.plate.faces}
            value={state.entries.plate.faces}
            choices={PLATE_FACES.map((value) => ({ value, label: texts.plate.face[value] }))}
            onChoose={(faces) => act.enter(({ plate }) => ({ plate: { ...plate, faces } }))}
          />
          <Choice
            view={view}
            where="plate.digits"
            legend={texts.plate.digits}
            value={state.entries.plate.digits}
            choices={PLATE_DIGITS.map((value) => ({ value, label: texts.plate.digitsOf[value] }))}
            onChoose={(digits) => act.enter(({ plate }) => ({ plate: { ...plate, digits } }))}
          />
          <div class="pair">
            <Field
              view={view}
              where="plate.angle"
              label={texts.plate.angle}
              unit={texts.degrees}
              hint={planned === undefined ? texts.plate.angleAsked : texts.plate.angleHint(format.degrees(planned))}
              numeric
            />
          </div>
          <h3>{texts.plate.palm}</h3>
          <div class="pair">
            {(Object.keys(PALM_FIELDS) as PalmFieldId[]).map((id) => (
              <Field
                view={view}
                key={id}
                where={id}
                label={texts.field[id].label}
                unit={texts[state.settings.unit]}
                hint={texts.field[id].how}
                numeric
                optional
              />
            ))}
          </div>
        </div>
      ) : null}
    </>
  );
}

function OwnBlock({ view }: { readonly view: View }) {
  const { texts, act, derived, state } = view;
  return (
    <div class="own">
      <p class="hint">{texts.block.ownAbout}</p>
      {DIGITS.map((digit) => (
        <Choice
          view={view}
          key={digit}
          where={`places.${digit}`}
          legend={texts.block.placeOf(texts.digitIn[digit])}
          value={state.entries.places[digit]}
          choices={[...PLACES, 'out' as const].map((place: Place | 'out') => ({
            value: place,
            label: place === 'out' ? texts.out : texts.place[place],
          }))}
          onChoose={(place) => act.enter(({ places }) => ({ places: { ...places, [digit]: place } }))}
        />
      ))}
      <div role="alert">
        {derived.blockProblems.map((problem) => (
          <p class="error" key={problem.message}>
            <span class="error-sign" aria-hidden="true">
              !
            </span>{' '}
            <Spoken sentence={sayProblem(problem, view.speaker)} />
          </p>
        ))}
      </div>
    </div>
  );
}

function Card({ view, card }: { readonly view: View; readonly card: BlockCard }) {
  const { texts, act, derived, state } = view;
  const { block, rank, path, problems, suggestion } = card;
  const checked = state.entries.block !== 'own' && derived.block?.id === block.id;
  const side = state.entries.side === 'right' ? 'right' : 'left';
  return (
    <div class={checked ? 'card chosen' : 'card'}>
      <label>
        <span class="card-title">
          <input type="radio" name="block" value={block.id} checked={checked} onChange={() => act.enter(() => ({ block: block.id }))} />
          <span>
            {rank === null ? null : <strong>{texts.block.rank(rank)}: </strong>}
            {blockTitle(block, texts)}
          </span>
        </span>
        {path ? <SectionPicture path={path} side={side} options={derived.options ?? DEFAULT_STRIP_OPTIONS} texts={texts} small /> : null}
      </label>
      {suggestion ? <Reasons view={view} suggestion={suggestion} /> : null}
      {problems.map((problem) => (
        <p class="reason refused" key={problem.message}>
          <Spoken sentence={sayProblem(problem, view.speaker)} />
        </p>
      ))}
    </div>
  );
}

function Reasons({ view, suggestion }: { readonly view: View; readonly suggestion: Suggestion }) {
  const { texts, format, state } = view;
  const { high } = SURVEYED_DIFFERENTIAL;
  const loss = mostLost(suggestion);
  const larger = Math.min(high, suggestion.differential + DIFFERENTIAL_STEP);
  return (
    <>
      <p class="reason">
        {texts.block.score(format.number(suggestion.score, 1), format.number(BEST))}, {texts.block.length(format.mm(suggestion.flatLength))}
        .{loss === null ? null : ` ${texts.block.losesMost(texts.block.term[loss])}`}
      </p>
      <details class="reason">
        <summary>{texts.block.points}</summary>
        <ul>
          {SCORE_TERMS.map((term, k) => (
            <li key={term}>
              {texts.block.term[term]}:{' '}
              {texts.block.score(format.number(suggestion.terms[term], 1), format.number(TERM_RULES[term].weight))}.{' '}
              {suggestion.reasons[k] ? sayReason(suggestion.reasons[k], state.settings.language) : null}
            </li>
          ))}
        </ul>
        <p>{larger > suggestion.differential ? texts.block.nextLarger(format.degrees(larger)) : texts.block.nextMost}</p>
      </details>
    </>
  );
}

/** The term that costs a block the most points; null when it has them all. */
function mostLost({ terms }: Suggestion): ScoreTerm | null {
  const lost = (term: ScoreTerm) => TERM_RULES[term].weight - terms[term];
  const worst = SCORE_TERMS.reduce((a, b) => (lost(b) > lost(a) ? b : a));
  return lost(worst) > 0.05 ? worst : null;
}
