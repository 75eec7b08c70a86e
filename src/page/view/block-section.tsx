import { useState } from 'preact/hooks';
import { PLACES, type Place } from '../../block/block.ts';
import { DIGITS } from '../../hand/digits.ts';
import { DEFAULT_STRIP_OPTIONS } from '../../pattern/strip/strip-options.ts';
import type { BlockCard } from '../block-cards.ts';
import { blockReason, blockTitle } from '../block-words.ts';
import { elementId, sayProblem } from '../say.ts';
import { Choice, Spoken } from './field.tsx';
import { SectionPicture } from './section-picture.tsx';
import { faultAt, type View } from './view.ts';

/** Ranked blocks with section and reason, all others, and one's own, digit by digit. */
export function BlockSection({ view }: { readonly view: View }) {
  const { texts, act, derived, state } = view;
  const suggested = derived.cards.filter((card) => card.rank !== null);
  const others = derived.cards.filter((card) => card.rank === null);
  const isOwn = state.entries.block === 'own';
  const openOthers = suggested.length === 0 || others.some((card) => card.block.id === derived.block?.id);
  const [opened, setOpened] = useState(false);
  const fault = faultAt(view, 'block');
  const noneYet = suggested.length === 0 && derived.suggested.problems[0];
  return (
    <section id="block" aria-labelledby="block-heading">
      <h2 id="block-heading" tabIndex={-1}>
        <span class="step" aria-hidden="true">
          3
        </span>
        {texts.block.heading}
      </h2>
      <p>{texts.block.about}</p>
      {derived.cards.some((card) => card.average) ? <p class="hint">{texts.block.averageHand}</p> : null}
      <fieldset class="choice" id={elementId('block')} tabIndex={-1}>
        <legend class="hidden">{texts.block.heading}</legend>
        {noneYet ? (
          <p class="note">
            <Spoken sentence={sayProblem(noneYet, view.speaker)} />
          </p>
        ) : suggested.length === 0 ? (
          <p class="note">{texts.block.noneFits}</p>
        ) : null}
        <div class="cards">
          {suggested.map((card) => (
            <Card view={view} card={card} key={card.block.id} />
          ))}
        </div>
        <details open={openOthers || opened} onToggle={(event) => setOpened(event.currentTarget.open)}>
          <summary>{texts.block.others}</summary>
          <div class="cards">
            {others.map((card) => (
              <Card view={view} card={card} key={card.block.id} />
            ))}
          </div>
        </details>
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
        {isOwn ? (
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
            {derived.blockProblems.map((problem) => (
              <p class="error" key={problem.code} role="alert">
                <span class="error-sign" aria-hidden="true">
                  !
                </span>{' '}
                <Spoken sentence={sayProblem(problem, view.speaker)} />
              </p>
            ))}
          </div>
        ) : null}
        {fault && !isOwn ? (
          <p class="error">
            <Spoken sentence={fault.sentence} />
          </p>
        ) : null}
      </fieldset>
      <p class="caution">
        {texts.caution.evidence} {texts.caution.licensed}
      </p>
    </section>
  );
}

function Card({ view, card }: { readonly view: View; readonly card: BlockCard }) {
  const { texts, act, derived, state } = view;
  const { block, rank, path, problems } = card;
  const checked = state.entries.block !== 'own' && derived.block?.id === block.id;
  const hand = derived.hand.ok ? derived.hand.value : null;
  const reason = blockReason(hand, rank, texts);
  const side = state.entries.side === 'right' ? 'right' : 'left';
  return (
    <label class={checked ? 'card chosen' : 'card'}>
      <span class="card-title">
        <input type="radio" name="block" value={block.id} checked={checked} onChange={() => act.enter(() => ({ block: block.id }))} />
        <span>
          {rank === null ? null : <strong>{texts.block.rank(rank)}: </strong>}
          {blockTitle(block, texts)}
        </span>
      </span>
      {path ? <SectionPicture path={path} side={side} options={derived.options ?? DEFAULT_STRIP_OPTIONS} texts={texts} small /> : null}
      {reason ? <span class="reason">{reason}</span> : null}
      {problems.map((problem) => (
        <span class="reason refused" key={problem.message}>
          <Spoken sentence={sayProblem(problem, view.speaker)} />
        </span>
      ))}
    </label>
  );
}
