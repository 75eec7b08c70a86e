import { handEnglish } from '../hand-words.ts';

/** The patient's sheet in English: short sentences, no trade words, the treated finger first. */
export const patientEnglish = {
  title: { strip: (finger: string) => `Your orthosis for your ${finger}`, plate: (finger: string) => `Your orthosis for your ${finger}` },
  titleNoFinger: 'Your hand orthosis',
  finger: { ...handEnglish.finger, long: 'middle finger' },
  and: 'and',
  hand: { left: 'Left hand', right: 'Right hand' },
  invented: 'Invented demo. Nobody was measured.',
  does: {
    heldLower: (finger: string) => `It holds your ${finger} a little lower than the fingers beside it.`,
    heldHigher: (finger: string) => `It holds your ${finger} a little higher than the fingers beside it.`,
    othersLower: (finger: string) => `It holds other fingers a little lower than your ${finger}.`,
    othersHigher: (finger: string) => `It holds other fingers a little higher than your ${finger}.`,
    extension: 'That helps the middle joint to straighten.',
    flexion: 'That helps the middle joint to bend.',
    plate: 'It keeps your knuckles still. So the middle joints have to move.',
    use: 'Use your hand with it.',
  },
  wear: { hours: 'Wear it for this long each day:', unit: 'hours', nightOn: 'At night: on', nightOff: 'At night: off' },
  on: {
    heading: 'On',
    strip: 'Slide it over your fingers. The side with the words faces out.',
    plate: 'Lay it on your hand. Close the straps, not too tight.',
  },
  off: { heading: 'Off', strip: 'Slide it off slowly, one finger at a time.', plate: 'Open the straps. Lift it off.' },
  exercise: {
    heading: 'Exercise with it on',
    extension: ['Start with a loose hand.', 'Straighten your middle joint. Hold it.', 'Let it go loose again.'],
    flexion: ['Start with straight fingers.', 'Bend your middle joint. Hold it.', 'Let it go straight again.'],
    times: 'times',
    aDay: 'times a day',
    seconds: 'seconds to hold',
    hurts: 'It may pull. It must not hurt.',
  },
  skin: {
    heading: 'Look at your skin',
    lines: [
      'The first time, wear it for 20 minutes.',
      'Take it off and look at your skin.',
      'Red marks must go within 20 minutes.',
      'If they stay, leave it off and call us.',
    ],
  },
  heat: {
    heading: 'Keep it cool',
    lines: ['Heat makes it soft and bends it.', 'Keep it off heaters and out of hot cars.', 'Wash it with soap and cool water.'],
  },
  stop: {
    heading: 'Take it off and call us if',
    lines: [
      'it hurts,',
      'a finger tingles or goes numb,',
      'a finger turns white, blue or cold,',
      'your hand swells,',
      'your skin opens or blisters,',
      'it cracks or sticks.',
    ],
    telephone: 'Telephone',
  },
  drive: 'Do not drive or run machines with it, unless we say so.',
  diary: {
    heading: {
      strip: 'Your diary. Bring it and the orthosis to each visit.',
      plate: 'Your diary. Bring it and the orthosis to each visit.',
    },
    columns: ['Day', 'Hours', 'Exercised', 'Skin good', 'Pain 0-10'],
  },
};
