import type { Device } from '../../../block/decide.ts';
import type { Motion } from '../../../block/plan-notes.ts';
import type { Side } from '../../../hand/digits.ts';

const DEVICE: Readonly<Record<Device, string>> = { strip: 'a strip', plate: 'a plate' };

/** What `plan` says round its notes, in English. Figures come as text. */
export const planTextEnglish = {
  who: (code: string, side: Side, invented: boolean) => `${code}, ${side} hand${invented ? ' (invented)' : ''}`,
  passively: (degrees: string) => ` (passively ${degrees})`,
  lacks: (finger: string, extension: string, flexion: string, zero: string) =>
    `${finger}, PIP extension lacks ${extension} degrees, PIP flexion ${flexion}. Extension-0-flexion: ${zero}.`,
  need: { none: 'none', both: 'both motions', extension: 'PIP extension', flexion: 'PIP flexion' },
  needIs: (need: string) => `Need: ${need}.`,
  nothingSeeErrors: 'Nothing is suggested; see the errors.',
  nothing: 'Nothing is suggested.',
  nothingMade: 'Nothing is to be made.',
  firstThen: (first: Device, second: Device) => `First ${DEVICE[first]}, then ${DEVICE[second]}; one is made at a time.`,
  serves: (device: Device) => `${DEVICE[device].replace('a', 'A')} serves.`,
  sure: (extension: string, flexion: string) =>
    `How sure that 10 degrees or more are lacking, by measuring error alone: extension ${extension} in 100, flexion ${flexion} in 100. It is no chance of success.`,
  heading: { first: 'FIRST', caution: 'CAUTION', note: 'Why', sources: 'Sources' },
  stripLater: (need: string) => `Strip, when its turn comes: for ${need}, best first.`,
  drawStrip: 'To draw this strip',
  drawFirst: 'To draw the first',
  drawIt: 'To draw it',
  others: (command: string) => `(others: ${command})`,
  plate: (degrees: string, range: readonly [string, string] | null) =>
    `Plate: MP joint at ${degrees} degrees of flexion to begin with${range === null ? '' : `, range ${range[0]} to ${range[1]}`}.`,
  notMakeable: (ids: string) => `Not makeable: ${ids}`,
  other: (motion: Motion) => `The other plan, if PIP ${motion} is read the other way.`,
  otherStrip: (ids: string) => `Strip: ${ids}.`,
  otherPlate: (degrees: string) => `Plate: MP joint at ${degrees} degrees.`,
  ofPoints: (points: string, most: string) => `${points} of ${most}`,
  differential: (degrees: string, low: string, high: string) => `differential ${degrees} degrees (surveyed use ${low} to ${high})`,
  term: {
    rotation: 'rotation',
    hold: 'hold',
    neighbours: 'neighbours',
    freePip: 'free PIP',
    length: 'length',
    layers: 'layers',
    weights: 'weights',
    differential: 'differential',
    next: 'next',
  },
};
