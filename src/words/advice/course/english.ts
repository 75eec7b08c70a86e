import type { NextArrangement } from '../../../block/next-arrangement.ts';
import type { HarmKey } from '../../../hand/signs.ts';
import { plain } from '../../../units/number.ts';
import { capital } from '../../hand-words.ts';
import type { PlanSpeech } from '../plan/plan-words.ts';
import { sayStep } from '../plan/say-plan.ts';
import type { CourseFigures, CourseReminders, Loss, PauseCause, Slope, StopNowSign, StopRingSign } from './course-figures.ts';

const n = (value: number) => plain(value, 1);
const list = (parts: readonly string[]) => (parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`);
const motions = { flexion: 'flexion', extension: 'extension' } as const;
const since = (noted: string | null) => (noted === null ? '' : ` (noted on ${noted}, not looked at since)`);
const crpsSign = {
  swelling: 'swelling',
  colourOrWarmth: 'colour or warmth',
  sweating: 'sweating',
  touchHurts: 'touch hurts',
  otherJointsStiffen: 'other joints stiffen',
} as const;

const harmNames: Readonly<Record<HarmKey, string>> = {
  pain: 'pain',
  skin: 'skin',
  sensation: 'feeling',
  colour: 'colour and warmth',
  infection: 'signs of infection',
  deformity: 'new deformity',
  crpsSigns: 'signs of CRPS',
};

const lost = ({ motion, lost: by, before, after, between: [from] }: Loss) =>
  `active PIP ${motions[motion]} lacks ${n(after)}, and lacked ${n(before)} on ${from}: ${n(by)} degrees lost`;
const rate = ({ degreesPerWeek, low, high }: Slope) => `${n(degreesPerWeek)} degrees a week (${n(low)} to ${n(high)})`;
const goalBy = ({ goalBy: by }: Slope) =>
  by === null ? '' : ` At this rate the goal is reached about ${by.date} (${by.earliest} to ${by.latest ?? 'later than 12 weeks'}).`;
const next = (steps: readonly NextArrangement[], speech?: PlanSpeech) =>
  steps.length === 0
    ? 'Plan again and take the arrangement that comes next.'
    : `The plan tries next: ${steps.map((step) => sayStep(step, 'en', speech)).join(', then ')}.`;

function stopNowSign(found: StopNowSign): string {
  switch (found.sign) {
    case 'colour':
      return `colour or warmth changed and stays changed${since(found.noted)}`;
    case 'sensation':
      return `feeling changed and stays changed${since(found.noted)}`;
    case 'infection':
      return `signs of infection${since(found.noted)}`;
    case 'deformity':
      return `a new deformity or an unstable joint${since(found.noted)}`;
    case 'activeLoss':
      return `${lost(found.loss)}, measured three times, while passive motion is kept`;
  }
}

function stopRingSign(found: StopRingSign): string {
  switch (found.sign) {
    case 'crps':
      return `pain ${n(found.pain)} of 10 at rest with ${list(found.signs.map((sign) => crpsSign[sign]))}: a complex regional pain syndrome is possible`;
    case 'pain':
      return `pain ${n(found.pain)} of 10 at rest, ${found.atMaking === null ? 'not noted' : n(found.atMaking)} when it was made`;
    case 'notRecovered':
      return `not recovered since the pause of ${found.pausedOn}`;
    case 'mpLost':
      return `passive MP motion lost ${n(found.lost)} degrees since ${found.between[0]}`;
    case 'beyondStraight':
      return `the PIP joint now goes ${n(found.degrees)} degrees beyond straight${found.otherHand === null ? '' : ` (other hand ${n(found.otherHand)})`}`;
  }
}

function pauseCause(found: PauseCause): string {
  switch (found.cause) {
    case 'skin':
      return `the skin is broken${since(found.noted)}`;
    case 'sensation':
      return `feeling changed while it was worn${since(found.noted)}`;
    case 'colour':
      return `colour or warmth changed while it was worn${since(found.noted)}`;
    case 'pain':
      return `pain went up from ${n(found.before)} to ${n(found.after)} of 10${since(found.noted)}`;
    case 'motion':
      return `${lost(found.loss)} (${n(found.limit)} or more is believed)`;
    case 'bothMotions':
      return `both motions are worse than when it was made: ${lost(found.extension)}; ${lost(found.flexion)}`;
  }
}

function fitSays({ marks, loose, girth }: CourseFigures['FIT']): string {
  const found = [
    ...(marks ? ['marks stay on the skin for more than 20 minutes'] : []),
    ...(loose ? ['it does not fit'] : []),
    ...(girth
      ? [
          `the ${girth.at === 'circumference' ? 'circumference' : 'PIP circumference'} went from ${n(girth.before)} to ${n(girth.after)} mm since it was made (limit ${n(girth.limit)})`,
        ]
      : []),
  ];
  const size = girth === null ? '' : girth.after > girth.before ? ' Make it larger.' : ' Make it closer.';
  return `${capital(list(found))}. Measure all held digits again, relieve it or make it again at the same angle.${size} This does not count as a change.`;
}

/** What the measuring error is taken from. */
const BETWEEN =
  ', 4.5 for two raters, between Engstrand et al., Am J Occup Ther 2012;66:98, and Reissner et al., J Orthop Surg Res 2019;14:173 (abstracts seen); the rest common practice, no source';

/** The one thing to change, or what comes where no angle is left. */
function changeOne(
  { change, nextBlocks }: Pick<CourseFigures['PLATEAU'], 'change' | 'nextBlocks'>,
  speech?: PlanSpeech,
  head = 'Change one thing:',
): string {
  return change === null
    ? `The angle cannot go 5 degrees further. ${next(nextBlocks, speech)}`
    : `${head} the ${change.what === 'mpAngle' ? 'MP angle of the plate' : 'differential'} from ${n(change.from)} to ${change.to[0] === change.to[1] ? n(change.to[0]) : `${n(change.to[0])} to ${n(change.to[1])}`} degrees, toward PIP ${motions[change.toward]}.`;
}

/** What each rule of the course says, in English. Degrees, mm, hours a day, pain 0 to 10. */
export const englishCourse = {
  /** What is to be done, for the head of a step. */
  action: {
    stop: 'Stop',
    pause: 'Pause',
    wean: 'Wean',
    refit: 'Refit',
    switch: 'Switch',
    teach: 'Ask and teach',
    change: 'Change one thing',
    keep: 'Keep',
    refer: 'Refer',
    review: 'Review',
    wait: 'Wait',
  },
  urgency: { 'same-day': 'the same day', 'working-day': 'within one working day' },
  message: {
    STOP_NOW: ({ signs }) =>
      `Take it off and leave it off. The surgeon or an emergency department sees the hand the same day: ${list(signs.map(stopNowSign))}. Put it on again only when they say so.`,
    STOP_RING: ({ signs }) =>
      `Take it off and leave it off; gentle use of the hand goes on. Ring the surgeon within one working day: ${list(signs.map(stopRingSign))}.`,
    PAUSE: ({ causes, measureAgain }) =>
      `${measureAgain ? 'Measure that motion twice more first and note the mean of the three; until that is done, leave it off' : 'Leave it off'}, put the cause right, and look again in 1 to 3 days: ${list(causes.map(pauseCause))}. Recovered: begin with half the hours. Not recovered: ring the surgeon.`,
    RELAPSE: ({ motion, lost: by, hours, again }) =>
      again
        ? `Weaning lost ${n(by)} degrees of PIP ${motions[motion]} for the second time. Go back to the hours that held${hours === null ? '' : ` (${n(hours)} a day)`}, and refer.`
        : `Weaning lost ${n(by)} degrees of PIP ${motions[motion]} against the best. Go back to the hours that last held${hours === null ? '' : ` (${n(hours)} a day)`} for two weeks, then one hour less a week.`,
    WEAN: ({ hours }) =>
      `What was gained holds. Take the next step down${hours === null ? '' : ` from ${n(hours)} hours a day`}: one hour less a week, and measure each week.`,
    GOAL: ({ extension, flexion, goal, plate }) =>
      `The goal is reached at two visits running (lacks ${n(extension)} of extension and ${n(flexion)} of flexion; goal ${n(goal)}). Begin to wean: one hour less a week, and measure each week.${plate ? ' Before that, see that the MP joint has its full motion.' : ''}`,
    MP_STIFF: ({ lost: by, between: [from] }) =>
      `Passive MP motion lost ${n(by)} degrees since ${from}. Half the hours, move the MP joint through its range every hour, measure again in a week.`,
    FIT: fitSays,
    SWITCH: ({ other, otherDeficit, servedDeficit, why }) =>
      `PIP ${motions[other]} lacks ${n(otherDeficit)} degrees; the motion that this was made for lacks ${n(servedDeficit)}${why === 'otherWorse' ? ', and the other got worse since it was made' : ' at two visits'}. Plan again from today's figures.`,
    TEACH: ({ wear, agreed, times }) =>
      `Worn ${n(wear)} hours a day${agreed === null ? '' : ` of ${n(agreed)} agreed`}. Ask what hinders; agree on fewer hours that can be kept.${times >= 3 ? ' This is the third time: make another device, or refer.' : ''}`,
    IDLE: ({ nextBlocks }, speech?: PlanSpeech) => `It does not redirect the motion. ${next(nextBlocks, speech)} This counts as a change.`,
    ENOUGH: ({ extension, flexion, days }) =>
      `For ${n(days)} days little is lacking (${n(extension)} of extension, ${n(flexion)} of flexion) and nothing more is gained. Ask the patient: wean, or go on.`,
    GAINING: (slope) => `PIP ${motions[slope.motion]} gains ${rate(slope)}. Keep it as it is.${goalBy(slope)}`,
    REFER: ({ slope, changes }) =>
      `PIP ${motions[slope.motion]} has come to a stand (${rate(slope)}) after ${changes} changes that were each given four weeks. Write to whoever sent the patient; not urgent.`,
    PLATEAU: (figures, speech?: PlanSpeech) =>
      `PIP ${motions[figures.slope.motion]} has come to a stand: ${rate(figures.slope)} although it was worn. ${changeOne(figures, speech)}`,
    REVIEW: ({ days, slope }) =>
      `${n(days)} days since it was made, and it is not certain either way${slope === null ? '' : ` (${rate(slope)})`}. The clinician keeps it or changes it.`,
    WAIT: ({ nextBy }) => `Not enough readings yet to say more. Next visit${nextBy === null ? ' within two weeks' : ` by ${nextBy}`}.`,
  } satisfies { readonly [R in keyof CourseFigures]: (figures: CourseFigures[R], speech?: PlanSpeech) => string },
  harm: harmNames,
  crpsSign,
  reminder: {
    HARM_NOT_NOTED: ({ missing }) =>
      `Not noted at this visit: ${list(missing.map((key) => harmNames[key]))}. Ask and look before following this.`,
    MEASURE_AGAIN: (found) =>
      found.why === 'making'
        ? 'PIP motion was read once, and every later visit is compared with this one: measure it twice more and note the mean of the three.'
        : `Active PIP ${motions[found.gain.motion]} lacks ${n(found.gain.after)}, and lacked ${n(found.gain.before)} on ${found.gain.between[0]}. One reading can be so much better by chance: measure it twice more and note the mean of the three.`,
    WEAR_NOT_NOTED: () => 'Hours worn are not noted: ask.',
    AFTER_PAUSE: ({ on }) => `After the pause of ${on}: recovered means half the hours at first.`,
    AFTER_STOP: ({ on }) => `On ${on} the advice was to stop: nothing is put on again without the word of whoever examined the hand.`,
    MP_NOT_MEASURED: () => 'Passive MP motion is not noted: measure it, since a plate can stiffen that joint.',
    DEVICE_NOT_NOTED: () => 'What was made is not noted, so nothing is said about its angle.',
  } satisfies { readonly [R in keyof CourseReminders]: (figures: CourseReminders[R]) => string },
  /** Where a rule is from. */
  source: {
    noSource: 'common practice, no source',
    crps: 'pain of 5 or more early after a wrist fracture: Moseley et al., J Pain 2014;15:16 (abstract seen); the rest common practice, no source',
    measuring: `measuring error: 1.96 x sqrt 2 x 3.5 degrees${BETWEEN}`,
    slope: `least squares; measuring error 3.5 degrees a reading${BETWEEN}`,
  },
  /** Of what waits while the device is laid off. */
  afterHarm: 'only once that has cleared',
  /** Under a graver word a gain is a fact, and no word to keep on; a pause has its reasons, and no word on when to begin again. */
  beside: {
    gaining: 'Gaining',
    GAINING: (slope: Slope) => `PIP ${motions[slope.motion]} gains ${rate(slope)}; what stands above comes first.`,
    slow: 'Slow',
    PLATEAU: (figures: CourseFigures['PLATEAU'], speech?: PlanSpeech) =>
      `Under 1 degree a week (${rate(figures.slope)}). Ask the patient whether that is enough. ${changeOne(figures, speech, 'If it is not, change one thing:')}`,
    REFER: ({ slope, changes }: CourseFigures['REFER']) =>
      `Under 1 degree a week (${rate(slope)}) after ${changes} changes that were each given four weeks. If that is not enough for the patient, write to whoever sent them; not urgent.`,
    PAUSE: ({ causes }: CourseFigures['PAUSE']) => `${capital(list(causes.map(pauseCause)))}. Leave it off.`,
  },
  starting: 'A starting point; the clinician decides.',
};
