import { useEffect } from 'preact/hooks';
import { CHANGE_STATES, CRPS_SIGNS, SKIN_STATES } from '../../../hand/signs.ts';
import type { CaseFile } from '../../../record/case-schema.ts';
import { CRPS_PAIN } from '../../../record/course/harm.ts';
import { tidyDay } from '../../../units/day.ts';
import { Choice, Tick } from '../../parts/choice.tsx';
import { Field } from '../../parts/field.tsx';
import { focusNext, goToField } from '../../parts/focus.ts';
import { useStore } from '../../parts/store-context.ts';
import { askForCode, refuse, saveCase } from '../../save-files.ts';
import { EMPTY_VISIT, type VisitEntry } from '../../state.ts';
import type { Store, VisitPart } from '../../store.ts';
import { neutralZero, readAngle } from '../../typed-motion.ts';
import { addVisit, newCase, proposedVisit, withdrawVisit } from '../../visit.ts';

/** Degrees by which motion must be worse than at the last visit for a second reading to be asked for. */
const WORSE = 5;

/** Left and middle of Visits: harm first, then motion and what is in use. */
export function VisitForm() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.visits;
  const file = store.file.value;
  if (file !== null) return <Form file={file} />;
  return (
    <section class="turn visit-form" id="visit" aria-labelledby="case-heading">
      <h2 id="case-heading" tabIndex={-1}>
        {texts.head.visits(0)}
      </h2>
      <p>{words.startAbout}</p>
      <p class="hint">{words.needsCode}</p>
      <div class="buttons">
        <button type="button" class="main" id="start-case" onClick={() => start(store)}>
          {words.start}
        </button>
      </div>
    </section>
  );
}

function Form({ file }: { readonly file: CaseFile }) {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.visits;
  const { visit } = store.entries.value;
  const isCorrecting = visit.correcting !== '';
  const part = store.visitPart.value;
  const isShown = (name: VisitPart) => !store.narrow.value || part === name;
  useEffect(() => propose(store), [file]);
  return (
    <section class="turn visit-form" id="visit" aria-labelledby="case-heading">
      <h2 id="case-heading" tabIndex={-1}>
        {isCorrecting ? words.correctThe(visit.date) : words.title(file.code, texts.hand.first[file.digit], texts.hand.handOf[file.side])}
      </h2>
      <div class="visit-columns">
        {isShown('harm') || isShown('pain') ? (
          <div class="visit-column">
            {isShown('harm') ? <Signs /> : <Answered />}
            {isShown('pain') ? <Pain /> : null}
          </div>
        ) : null}
        {isShown('motion') || isShown('wear') ? (
          <div class="visit-column">
            {isShown('motion') ? <MotionNow file={file} /> : null}
            {isShown('wear') ? <Wear /> : null}
          </div>
        ) : null}
      </div>
      {isShown('next') ? (
        <div class="buttons">
          <button type="button" class="main" id="add-visit" onClick={() => recordVisit(store, file)}>
            {isCorrecting ? words.addCorrected : words.add}
          </button>
          <button type="button" id="save-case" onClick={() => void saveCase(store, file)}>
            {words.save}
          </button>
          {isCorrecting ? (
            <>
              <button type="button" id="withdraw" onClick={() => withdraw(store, file, Number(visit.correcting))}>
                {words.withdraw}
              </button>
              <button type="button" onClick={() => clearForm(store, words.leave)}>
                {words.leave}
              </button>
            </>
          ) : null}
          <span class="saved">{store.saved.value}</span>
        </div>
      ) : null}
    </section>
  );
}

/** How the orthosis was worn, and whether it does its work. */
function Wear() {
  const store = useStore();
  const texts = store.texts.value;
  const words = texts.visits;
  const { visit } = store.entries.value;
  const isCorrecting = visit.correcting !== '';
  return (
    <>
      <div class="pair">
        <Field where="visit.wear" label={words.field.wear} numeric optional />
        <Field where="visit.wearAgreed" label={words.field.wearAgreed} numeric optional />
      </div>
      <div class="answers">
        <Answer id="fits" legend={words.fits} />
        <Answer id="redirects" legend={words.redirects} />
        {isCorrecting ? null : (
          <Choice
            where="visit.made"
            legend={words.made}
            value={visit.made === 'yes' ? 'yes' : 'no'}
            choices={[
              { value: 'no', label: words.goesOn },
              { value: 'yes', label: words.nowMade },
            ]}
            onChoose={(value) => set(store, 'made', value === 'yes' ? 'yes' : '', value === 'yes' ? words.nowMade : words.goesOn)}
          />
        )}
      </div>
      <details>
        <summary>{words.more}</summary>
        <div class="pair">
          <Field where="visit.mpLacks" label={words.field.mpLacks} optional />
          <Field where="visit.mpBends" label={words.field.mpBends} optional />
          <Field where="visit.rater" label={words.field.rater} optional longest={4} />
        </div>
        <Answer id="weaning" legend={words.weaning} />
        <Field where="visit.comment" label={words.field.comment} hint={texts.files.noteHint} longest={300} optional />
      </details>
    </>
  );
}

/** Is anything wrong today? Five signs that one press fills visibly; on a narrow screen it goes on to the pain, where they are said. */
function Signs() {
  const store = useStore();
  const words = store.texts.value.visits;
  const { visit } = store.entries.value;
  return (
    <>
      <h3>{words.wrong}</h3>
      <div class="buttons">
        <button
          type="button"
          id="nothing-wrong"
          onClick={() => {
            store.enter({ where: 'visit', value: words.nothingWrong }, (now) => ({
              visit: { ...now.visit, skin: 'ok', sensation: 'ok', colour: 'ok', infection: 'no', deformity: 'no' },
            }));
            store.commit();
            goToField(store, 'visit.pain');
          }}
        >
          {words.nothingWrong}
        </button>
        <span class="hint">{words.nothingWrongHint}</span>
      </div>
      <div class="answers">
        <Choice
          where="visit.skin"
          legend={words.skin}
          value={visit.skin as (typeof SKIN_STATES)[number] | ''}
          choices={SKIN_STATES.map((value) => ({ value, label: words.skinOf[value] }))}
          onChoose={(value) => set(store, 'skin', value, `${words.skin} ${words.skinOf[value]}`)}
        />
        {(['sensation', 'colour'] as const).map((id) => (
          <Choice
            key={id}
            where={`visit.${id}`}
            legend={words[id]}
            value={visit[id] as (typeof CHANGE_STATES)[number] | ''}
            choices={CHANGE_STATES.map((value) => ({ value, label: words.changeOf[value] }))}
            onChoose={(value) => set(store, id, value, `${words[id]} ${words.changeOf[value]}`)}
          />
        ))}
        <Answer id="infection" legend={words.infection} />
        <Answer id="deformity" legend={words.deformity} />
      </div>
    </>
  );
}

/** What was answered of the five signs, in a line; a sign that was not asked about stands open in it. */
function Answered() {
  const store = useStore();
  const words = store.texts.value.visits;
  const { skin, sensation, colour, infection, deformity } = store.entries.value.visit;
  const change = (state: string) => words.changeOf[state as (typeof CHANGE_STATES)[number]];
  const isThere = (answer: string) => words[answer as 'yes' | 'no'];
  const signs = [
    [words.skin, words.skinOf[skin as (typeof SKIN_STATES)[number]]],
    [words.sensation, change(sensation)],
    [words.colour, change(colour)],
    [words.infection, isThere(infection)],
    [words.deformity, isThere(deformity)],
  ];
  return <p class="hint">{signs.map(([sign, answer]) => `${sign}: ${answer ?? '?'}`).join(' · ')}</p>;
}

/** Pain as a number, and more signs when it hurts. */
function Pain() {
  const store = useStore();
  const words = store.texts.value.visits;
  const { visit } = store.entries.value;
  const pain = readAngle(visit.pain);
  const asksCrps = (pain.kind === 'degrees' && pain.degrees >= CRPS_PAIN) || visit.crpsSigns !== '';
  const signs = visit.crpsSigns.split(' ');
  const setSigns = (next: readonly string[], shown: string) => set(store, 'crpsSigns', next.join(' '), shown);
  return (
    <>
      <div class="pair">
        <Field where="visit.pain" label={words.field.pain} numeric longest={4} />
        <Field where="visit.date" label={words.field.date} longest={14} tidy={tidyDay} />
      </div>
      {asksCrps ? (
        <fieldset class="plain ticks across" id="field-visit-crpsSigns" tabIndex={-1}>
          <legend>{words.crps}</legend>
          <Tick
            where="visit.crpsNone"
            label={words.crpsNone}
            checked={signs.includes('none')}
            onChange={(is) => setSigns(is ? ['none'] : [], words.crpsNone)}
          />
          {CRPS_SIGNS.map((sign) => (
            <Tick
              key={sign}
              where={`visit.crps.${sign}`}
              label={words.crpsOf[sign]}
              checked={signs.includes(sign)}
              onChange={(is) =>
                setSigns(
                  CRPS_SIGNS.filter((s) => (s === sign ? is : signs.includes(s))),
                  words.crpsOf[sign],
                )
              }
            />
          ))}
        </fieldset>
      ) : null}
    </>
  );
}

/** Active motion as two numbers; the second reading and passive motion are asked when it is worse than at the last visit. */
function MotionNow({ file }: { readonly file: CaseFile }) {
  const store = useStore();
  const words = store.texts.value.visits;
  const { visit } = store.entries.value;
  const before = visit.correcting === '' ? file.visits.at(-1) : file.visits[Number(visit.correcting) - 1];
  const [lacks, bends] = [readAngle(visit.lacks), readAngle(visit.bends)];
  const was = before?.goniometry.pip.active;
  const lackedBefore = was ? (was.extensionDeficit ?? -(was.hyperextension ?? 0)) : null;
  const isWorse =
    was !== undefined &&
    ((lacks.kind === 'degrees' && lackedBefore !== null && lacks.degrees - lackedBefore >= WORSE) ||
      (bends.kind === 'degrees' && was.flexion - bends.degrees >= WORSE));
  return (
    <>
      <div class="motion-row">
        <Field where="visit.lacks" label={words.field.lacks} />
        <Field where="visit.bends" label={words.field.bends} />
        <span class="neutral">{neutralZero({ lacks: visit.lacks, bends: visit.bends }) ?? ''}</span>
      </div>
      <Answer id="repeated" legend={words.repeated} />
      <div class="motion-row">
        <Field where="visit.passiveLacks" label={words.field.passiveLacks} optional={!isWorse} />
        <Field where="visit.passiveBends" label={words.field.passiveBends} optional={!isWorse} />
        <span class="neutral">{neutralZero({ lacks: visit.passiveLacks, bends: visit.passiveBends }) ?? ''}</span>
      </div>
    </>
  );
}

function Answer({
  id,
  legend,
}: {
  readonly id: 'infection' | 'deformity' | 'fits' | 'redirects' | 'repeated' | 'weaning';
  readonly legend: string;
}) {
  const store = useStore();
  const words = store.texts.value.visits;
  return (
    <Choice
      where={`visit.${id}`}
      legend={legend}
      value={store.entries.value.visit[id] as 'yes' | 'no' | ''}
      choices={(['no', 'yes'] as const).map((value) => ({ value, label: words[value] }))}
      onChoose={(value) => set(store, id, value, `${legend} ${words[value]}`)}
    />
  );
}

function set(store: Store, key: VisitEntry, value: string, shown: string): void {
  store.enter({ where: `visit.${key}`, value: shown }, (now) => ({ visit: { ...now.visit, [key]: value } }));
}

/** Today, in the place where the page is opened. */
function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** An untouched form gets today's date and the last motion; it is no step of the history. */
function propose(store: Store): void {
  const file = store.file.peek();
  const { visit } = store.entries.peek();
  if (file === null || JSON.stringify(visit) !== JSON.stringify(EMPTY_VISIT)) return;
  store.fill((now) => ({ ...now, visit: proposedVisit(file, today(), store.texts.peek().finger.beyond) }));
}

function clearForm(store: Store, shown: string): void {
  const file = store.file.peek();
  store.enter({ where: 'visit', value: shown }, () => ({
    visit: file ? proposedVisit(file, today(), store.texts.peek().finger.beyond) : EMPTY_VISIT,
  }));
  store.commit();
  focusNext('case-heading');
}

/** A case is started from the design's hand; its code is asked for now. */
function start(store: Store): void {
  const derived = store.settle();
  if (store.entries.peek().code.trim() === '') {
    askForCode(store);
    return;
  }
  const [missing] = derived.missing;
  if (!derived.hand.ok) {
    store.checked.value = true;
    if (missing !== undefined) {
      goToField(store, missing);
      return;
    }
    store.mode.value = 'design';
    store.panel.value = 'look';
    return;
  }
  const made = newCase(derived.hand.value);
  if (!made.ok) {
    refuse(store, made.problems);
    return;
  }
  store.record(made.value.file);
  store.said.value = store.texts.peek().visits.started;
  focusNext('case-heading');
}

export function recordVisit(store: Store, file: CaseFile): void {
  const derived = store.settle();
  const { visit } = store.entries.peek();
  const words = store.texts.peek().visits;
  const isMade = visit.made === 'yes' && !derived.average;
  const grown = addVisit(file, visit, isMade ? derived.drawn : null);
  if (!grown.ok) {
    refuse(store, grown.problems);
    return;
  }
  store.record(grown.value.file);
  store.fill((now) => ({ ...now, visit: EMPTY_VISIT }));
  store.fileProblems.value = [];
  store.said.value = visit.correcting === '' ? words.added : words.corrected;
  focusNext('case-heading');
}

function withdraw(store: Store, file: CaseFile, index: number): void {
  const less = withdrawVisit(file, index);
  if (!less.ok) {
    refuse(store, less.problems);
    return;
  }
  store.record(less.value.file);
  store.fill((now) => ({ ...now, visit: EMPTY_VISIT }));
  store.said.value = store.texts.peek().visits.withdrawn;
  focusNext('case-heading');
}
