import { handEnglish } from '../hand-words.ts';

/** The steps of making a strip in English. `finger` is a name as in "long finger"; `back` and `palm` are sides of the hand. */
export const storyEnglish = {
  heading: 'Making it, step by step',
  how: "Seen from the therapist's seat. Grey: done. Blue: now. Orange: the treated finger.",
  finger: handEnglish.finger,
  short: handEnglish.short,
  and: handEnglish.and,
  back: 'back',
  palm: 'palm',
  thumbSide: 'thumb side',
  mp: { lowered: 'lower', raised: 'higher' },
  view: {
    fingertips: 'From the fingertips, back up',
    side: 'From the side',
    above: 'From above, back up',
    palmUp: 'Hand turned palm up, from above: finger order is turned too',
    large: 'From the fingertips, large',
    flat: 'From above, back up; the strip beside',
    flatPalmUp: 'Hand turned palm up; the strip beside',
  },
  step: {
    paper: {
      title: 'Try it in paper',
      text: (held: string) =>
        `Cut the paper strip, weave it in the same way with the ${held} held, and read on its scale where the ends meet.`,
    },
    position: {
      title: 'Hold the hand so',
      text: (held: string, degrees: string, how: string) =>
        `${held} ${degrees} degrees ${how} than the neighbours at the MP joint; the angle card lies on the backs. Wrist straight. A second person or the patient's other hand holds the fingertips.`,
    },
    warm: {
      title: 'Warm, blot, test, begin',
      text: (held: string) =>
        `65 to 71 C, under a minute. Blot, wait, test on your own skin. "OUTSIDE" looks at you; the seam mark lies on the middle of the ${held}, where your other hand keeps it.`,
    },
    first: {
      dorsal: {
        title: (finger: string) => `Over the ${finger} and round`,
        text: (finger: string) => `Over the back of the ${finger}, round its outer side, then under it. The edge stays 2 mm off the web.`,
      },
      palmar: {
        title: (finger: string) => `Under the ${finger} and round`,
        text: (finger: string) => `Under the ${finger}, round its outer side, then over its back. The edge stays 2 mm off the web.`,
      },
    },
    through: {
      first: {
        over: {
          title: (held: string) => `Up, over the ${held}`,
          text: (held: string) => `Up through the web and over the back of the ${held}, flat and without stretching.`,
        },
        under: {
          title: (held: string) => `Down, under the ${held}`,
          text: (held: string) => `Down through the web and under the ${held}, flat and without stretching.`,
        },
      },
      second: {
        over: {
          title: (held: string) => `On over the ${held}, down`,
          text: (held: string) => `On over the back of the ${held}, then down through the next web.`,
        },
        under: {
          title: (held: string) => `On under the ${held}, up`,
          text: (held: string) => `On under the ${held}, then up through the next web.`,
        },
      },
      over: {
        title: (held: string) => `Up, over the ${held}, down`,
        text: (held: string) => `Up through the web, over the back of the ${held}, down through the next web.`,
      },
      under: {
        title: (held: string) => `Down, under the ${held}, up`,
        text: (held: string) => `Down through the web, under the ${held}, up through the next web.`,
      },
    },
    beside: {
      title: (finger: string) => `Along the ${finger}`,
      dorsal: (finger: string) => `On over the back of the ${finger}, flat and without stretching.`,
      palmar: (finger: string) => `On under the ${finger}, flat and without stretching.`,
    },
    second: {
      palmar: {
        title: (finger: string) => `Under the ${finger}`,
        text: (finger: string) => `Under the ${finger}, then round its outer side. The cut-back edge stays off the PIP crease.`,
      },
      dorsal: {
        title: (finger: string) => `Over the ${finger}`,
        text: (finger: string) => `Over the back of the ${finger}, then round its outer side. The edge stays off the PIP joint.`,
      },
    },
    back: {
      tacked: {
        title: 'Back to the seam; press the tack',
        text: (finger: string, held: string) =>
          `Back along the ${finger} to the seam mark. While it is dry and soft, press both layers together on the ${held} for about 5 seconds: thumb on top, fingers against it.`,
      },
      spanning: {
        title: 'Back to the seam',
        text: (finger: string, held: string) => `Back along the ${finger} to the seam mark. The outer layer stays taut across the ${held}.`,
      },
    },
    check: {
      title: 'Cool, check',
      text: 'Straighten every PIP joint, then bend it. Nails lie side by side, none crosses. A pressed nail turns pink in 2 seconds. Feeling is as before.',
    },
    close: {
      title: 'Take off, close, trim',
      text: {
        lap: 'Take it off finger by finger. Bond the lap at its marks, trim the end, round every edge. Words face out.',
        opening: 'Take it off finger by finger. The lap stays open and gets a strap. Trim the end, round every edge. Words face out.',
        pinch: 'Take it off finger by finger. Pinch the tabs at their marks, trim the end, round every edge. Words face out.',
      },
    },
  },
  plate: {
    place: {
      title: 'Try the paper on the hand',
      view: 'From the side of the plate',
      text: 'Cut the paper out and lay it on the hand at the angle. Wrist crease, thumb web and free fingers stay clear. Mend the paper, not the sheet.',
    },
    outline: {
      title: 'Draw round it, cut',
      view: 'From above: grey is the paper, blue the sheet',
      text: 'Words up. Draw round the paper, carry all marks over, cut. Stick padding on the bony points of the hand now, not later.',
    },
    hold: {
      title: (degrees: string) => `Hold the MP joints at ${degrees} degrees`,
      view: 'From the side, the gauge beside the hand',
      text: 'A second person holds the fingertips. Ring of the gauge on the MP joint, its arms along hand and finger. Wrist straight.',
    },
    bend: {
      title: 'Warm, blot, bend over an edge',
      view: 'From above: grey is the table',
      text: '65 to 71 C, as the sheet asks for. Blot, wait, test on your own skin. Bend it along the MP bend line over the edge of the table.',
      flat: '65 to 71 C, as the sheet asks for. Blot, wait, test on your own skin. At 0 degrees it has no bend: it goes onto the hand flat.',
    },
    fit: {
      title: 'Lay it on, stroke it down',
      view: 'From the side of the plate',
      text: 'Hand part first, then wings and side walls. Stroke, do not press. Gauge beside it until it is hard. Flare the edges at wrist and thumb.',
    },
    strap: {
      title: 'Straps on, then check',
      view: 'From the other side',
      text: 'Straps A and B hold, they do not pull. PIP joints move fully, wrist and thumb are free. A pressed nail turns pink in 2 seconds. Feeling is as before.',
    },
  },
  wrong: { crossing: 'Wrong: a nail crosses', crease: 'Wrong: over the crease', twisted: 'Wrong: twisted' },
  scale: 'scale',
  thumb: 'thumb presses',
  helper: 'helper',
};
