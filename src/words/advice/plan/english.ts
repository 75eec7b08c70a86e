import type { Ask } from '../../../block/plan-notes.ts';
import type { DigitName } from '../../../hand/digits.ts';
import type { StopSign } from '../../../hand/signs.ts';
import { plain } from '../../../units/number.ts';
import type { PlanWords } from './plan-words.ts';

const d = (value: number) => plain(value, 1);
const degrees = (value: number) => `${d(value)} ${d(value) === '1' ? 'degree' : 'degrees'}`;
const inTen = (chance: number) => `${plain(chance * 10, 0)} in 10`;
const finger = (digit: DigitName) => `${digit} finger`;
const list = (digits: readonly DigitName[]) => digits.join(' and ');

const SIGN: Readonly<Record<StopSign, string>> = {
  paleBlueOrCold: 'The finger is pale, blue or cold',
  infection: 'There are signs of infection',
  newNumbness: 'Numbness is new since the injury was last examined',
  newActiveLoss: 'Active motion is newly lost while passive motion is kept',
  unstableJoint: 'A joint is unstable or newly deformed',
  suspectedCrps: 'Complex regional pain syndrome is suspected',
  openWound: 'There is an open wound',
  pins: 'Pins or wires are in place',
  inflamedJoint: 'A joint is acutely inflamed',
};
const ASK: Readonly<Record<Ask, string>> = {
  surgeonSameDay: 'Take off what is worn and ask the surgeon or an emergency department the same day.',
  surgeonWorkingDay: 'Take off what is worn and ask the surgeon within a working day; gentle use of the hand goes on.',
  surgeonBefore: "Ask the surgeon before anything is made; the surgeon's word lifts this.",
  referrer: 'Ask the referring doctor before anything is made.',
};
const ALTERNATIVES = 'a serial cast, a stretching orthosis, or back to the referrer';

/** The sentences of the plan in English. */
export const english: PlanWords = {
  ask: ASK,
  note: {
    STOP_SIGN: ({ sign, ask }) =>
      `${SIGN[sign]}, so nothing is suggested. ${ASK[ask]}${ask === 'surgeonBefore' ? ' Enter it as surgeonAgrees.' : ''}`,
    UNPROTECTED_REPAIR: () =>
      "A repair or fracture is not protected: motion outside the surgeon's protocol may break it. Ask the surgeon. If you have examined the hand and decide that a device may be tried within the protocol, say so with --clinician-confirms.",
    HARD_END_FEEL: () =>
      'The PIP joint has a hard end-feel: redirected active motion does not move such a stop. Ask the referrer. If you have examined the hand and decide that a device may be tried, say so with --clinician-confirms.',
    CENTRAL_SLIP: ({ active, passive, weeks }) =>
      `The finger stops ${degrees(active)} short of straight by itself and ${d(passive)} when helped, ${weeks === null ? 'and the time since the injury is not known' : `${d(weeks)} weeks after the injury`}: the central slip may be torn. Test it first and ask the surgeon; enter the outcome (centralSlip), the weeks, or the surgeon's word (surgeonAgrees).`,
    CENTRAL_SLIP_TORN: () =>
      "The central slip is torn: ask the surgeon before anything is made, and enter the surgeon's word (surgeonAgrees).",
    BOUTONNIERE_EARLY: ({ weeks }) =>
      `A boutonniere ${weeks === null ? 'of unknown age' : `${d(weeks)} weeks old`} is treated by the surgeon's protocol: ask first, and enter the weeks or the surgeon's word (surgeonAgrees).`,
    BOUTONNIERE_CAST: ({ passive }) =>
      `A chronic boutonniere that stays ${degrees(passive)} short of straight when helped is cast first: within 20 degrees of straight a strip may follow. Ask the surgeon or the referrer about casting.`,
    BOUTONNIERE_MEASURE: () =>
      'A chronic boutonniere needs its passive extension measured first: within 20 degrees of straight a strip may follow, else it is cast.',
    BEYOND_STRAIGHT: ({ beyond, other }) =>
      `The PIP joint goes ${degrees(beyond)} beyond straight, ${other === null ? 'and the other hand was not measured' : `the other hand's ${d(other)}`}: no strip for extension, and no plate over 45 degrees. Ask the referrer.`,
    NOTHING_LACKS: ({ extension, flexion }) =>
      `Extension lacks ${degrees(extension)} and flexion ${d(flexion)}, under 10 each: there is nothing to make.`,
    SLIGHT: ({ motion, deficit }) =>
      `PIP ${motion} lacks ${degrees(deficit)}, which is slight: exercise; a device only where it is asked for (--anyway).`,
    ANYWAY: ({ motion, deficit }) => `PIP ${motion} lacks only ${degrees(deficit)}; a device is planned because it was asked for.`,
    PLATE_FIRST: ({ smaller, larger }) =>
      `Both motions are lacking, and the smaller deficit (${d(smaller)}) is at least a third of the larger (${d(larger)}): a plate first, a strip for the larger second. One is made at a time.`,
    STRIP_FIRST: ({ smaller, larger }) =>
      `Both motions are lacking, but the smaller deficit (${d(smaller)}) is under a third of the larger (${d(larger)}): a strip for the larger first, a plate second. One is made at a time.`,
    MEASURE_AGAIN: ({ motion, deficit, chance }) =>
      `With a reading of ${degrees(deficit)} the chances are ${inTen(chance)} that PIP ${motion} truly lacks 10 or more (by measuring error alone). Measure it twice more and enter the mean of the three.`,
    STILL_UNSURE: ({ motion, deficit, chance, readings }) =>
      `The mean of ${readings} readings, ${degrees(deficit)}, still leaves it open: the chances are ${inTen(chance)} that PIP ${motion} truly lacks 10 or more. Both plans are shown, you decide.`,
    PASSIVE_ALIKE: ({ motion, active, passive }) =>
      `PIP ${motion} lacks ${degrees(active)} actively and ${d(passive)} passively: the joint is stiff, and redirecting active motion may gain little. Weigh ${ALTERNATIVES} first.`,
    LARGE_DEFICIT: ({ motion, deficit }) =>
      `PIP ${motion} lacks ${degrees(deficit)}, much for exercise alone. Weigh ${ALTERNATIVES} first.`,
    MEASURE_PASSIVE: ({ motion }) =>
      `Measure passive PIP ${motion}: it tells a stiff joint from a weak or torn tendon${motion === 'extension' ? '. Early after an injury, free passive motion with a lag of 20 or more calls for the central slip test first' : ''}.`,
    MEASURE_MP: () => "Measure the passive motion of the MP joint: the plate's angle must lie inside it.",
    PLATE_ANGLE: ({ extension, flexion, degrees: angle }) =>
      `Extension lacks ${degrees(extension)} and flexion ${d(flexion)}: by their shares the MP joint is held at ${degrees(angle)} of flexion. More makes PIP extension easier, less PIP flexion.`,
    PLATE_MOVED: ({ wanted, degrees: angle, from, to }) =>
      `The deficits ask for ${degrees(wanted)}; the joint and its motion allow ${d(from)} to ${d(to)}, so the plate is planned at ${d(angle)}.`,
    NO_PLATE: ({ extension, flexion, from, to }) =>
      `No plate favours ${extension > flexion ? 'extension' : flexion > extension ? 'flexion' : 'both alike'} here: that needs ${extension > flexion ? '45 to 90' : flexion > extension ? '0 to 45' : '45'} degrees of MP flexion, and the MP joint can be held at ${d(from)} to ${d(to)}.`,
    PLATE_NEXT: () =>
      'If PIP extension lags, try 5 to 10 degrees more MP flexion; if PIP flexion lags, 5 to 10 less, inside the passive MP motion.',
    PLATE_HOURS: () =>
      'Agree on hours and write them down; never all day. Move the MP joint through its whole range each time the plate comes off.',
    STRIP_WEAR: () =>
      'Four in five surveyed therapists use such a strip for 2 to 6 weeks, during exercise and function. How many hours a day is not known for this kind; of others, for PIP extension, a review saw most gained from 6 on. Agree on the hours and write them down.',
    FLEXION_AGAINST: ({ degrees: expected, from }) =>
      from === 'otherHand'
        ? `Flexion is reckoned against the other hand, ${degrees(expected)}.`
        : `Flexion is reckoned against ${degrees(expected)}, since the other hand was not measured.`,
    SENSATION: () =>
      'Reduced sensation: heat and pressure are not felt. Let the plastic cool longer, try it on your own skin, look at the skin early and often.',
    SWELLING: () => 'Changing swelling changes the fit. Measure when it is as usual, again before making, and at each visit; fit loosely.',
    HYPERMOBILE: ({ digits }) =>
      `Hypermobile MP or CMC joint (${list(digits)}): watch rotation, and that a raised digit's MP joint does not go past straight.`,
    CHILD: () =>
      "A child's hand: small parts can be swallowed, heat burns sooner. Wear only with supervision, and measure again as the hand grows.",
    NO_NEIGHBOUR: ({ digit }) =>
      `The ${finger(digit)} has no neighbour on one side: it lies at the border of three digits, and its rotation is not controlled. Watch for it.`,
    NO_BLOCK_LEFT: ({ digit, absent }) =>
      `No strip runs round the ${finger(digit)} without the ${list(absent)} finger${absent.length > 1 ? 's' : ''}: it takes three neighbouring digits. Ask the referrer about another device.`,
    EVIDENCE: ({ motion }) =>
      motion === 'extension'
        ? 'Evidence is thin: orthoses of other kinds helped PIP extension after trauma in trials; for this kind there is one case series. The clinician decides.'
        : 'Evidence is thin: no trial of any orthosis for PIP flexion was found; for this kind there is one case series. The clinician decides.',
  },
  reason: {
    ROTATION_FOUR: () => 'Four digits control rotation.',
    ROTATION_HYPERMOBILE: () =>
      'The hypermobile little finger is the border of three digits: its rotation is not controlled, so this comes after every block of four.',
    ROTATION_BORDER: ({ digit }) =>
      `Three digits do not control the rotation of the ${finger(digit)} at their border; four are the usual choice.`,
    ROTATION_BOTH_SIDES: ({ digit }) => `A digit on each side keeps the ${finger(digit)} from turning.`,
    HOLD_OWN: ({ digit, place, need, degrees: angle }) =>
      `The ${finger(digit)} itself is ${place}: the ${digit} MP joint is ${need === 'pipFlexion' ? 'extended' : 'flexed'} by ${degrees(angle)} against the other digits.`,
    HOLD_OTHERS: ({ digit, held, place, need, degrees: angle }) =>
      `The ${list(held)} ${held.length > 1 ? 'fingers are' : 'finger is'} ${place}: the ${digit} MP joint is ${need === 'pipFlexion' ? 'extended' : 'flexed'} by ${degrees(angle)} against the other digits.`,
    NEIGHBOURS: ({ degrees: angle }) => `Against the digits beside it the angle is ${degrees(angle)}.`,
    NEIGHBOURS_NONE: ({ digit }) => `The digit beside the ${finger(digit)} is not held, so between the two there is no angle.`,
    FREE_ALL: () => 'No digit has plastic on its palmar side.',
    FREE: ({ digit, degrees: angle }) => `PIP flexion stays free: ${plain(angle, 0)} degrees or more (least at the ${finger(digit)}).`,
    FREE_STOPPED: ({ digit, degrees: angle, least }) =>
      `The strip may stop PIP flexion of the ${finger(digit)} at ${plain(angle, 0)} degrees, under ${plain(least, 0)}.`,
    LENGTH_SHORTEST: ({ mm }) => `The strip is ${d(mm)} mm long, the shortest of these.`,
    LENGTH_MORE: ({ mm, more }) => `The strip is ${d(mm)} mm long, ${d(more)} mm more than the shortest.`,
    LAYERS: ({ count }) => `${count} layers of plastic in the palm, summed over the digits.`,
  },
  next: {
    differential: ({ to }) => `a differential of ${degrees(to)}`,
    block: ({ block }, { blockName }) => blockName(block),
    plate: ({ degrees: angle }) => `a plate at ${degrees(angle)}`,
    refer: () => 'measure again and talk it over with the referrer',
  },
  ifNot: (steps) => `If it does not redirect: first ${steps.join(', then ')}.`,
};
