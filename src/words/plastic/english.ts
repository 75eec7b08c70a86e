import { lookAtEnglish } from './look-at-english.ts';

/** Words of cut lists, laid-out sheets, stock sizes and the labels of their bags. Lengths and counts come as text, mm. */
export const plasticEnglish = {
  lookAt: lookAtEnglish,
  side: { left: 'LEFT', right: 'RIGHT' },
  invented: '(invented demo)',
  list: {
    title: (page: string, pages: string) => `CUT LIST, page ${page} of ${pages}`,
    head: {
      number: 'No',
      code: 'CODE',
      side: 'HAND',
      size: 'SIZE, mm',
      quantity: 'HOW MANY',
      notes: 'STRIP or PLATE, and what to look at',
    },
    blank: 'blank, without marks',
    look: (letters: string) => `LOOK AT ${letters}`,
    legend: 'WHAT TO LOOK AT',
  },
  sheet: {
    title: (number: string, count: string, remnant: string, parts: string) =>
      `Sheet ${number} of ${count}, ${remnant === '' ? 'new sheet' : `remnant ${remnant}`}, ${parts === '1' ? '1 part' : `${parts} parts`}`,
    size: (along: string, across: string, used: string) => `${along} along the grain x ${across} mm, ${used} % used`,
    rules: (gap: string, margin: string, grain: string) => `gap ${gap}, margin ${margin}, grain ${grain}`,
    grainRule: { along: 'along', across: 'across', free: 'free' },
    grain: 'GRAIN',
    parts: 'PARTS, from the upper left, row by row',
    noRoom: (list: string) => `No room for the number on: ${list}`,
    outlines: 'CUT ALONG THE OUTLINES',
    nested: 'These parts are nested, some of them turned half round (never over), and no straight cut runs between them.',
    restsFirst: 'First the rests with shears, mm from the lower left corner:',
    thenOutlines: 'then each part along its outline',
    order: 'CUTTING ORDER with shears, mm from the lower left corner',
    orderOf: (cuts: string) =>
      `CUTTING ORDER with shears, ${cuts === '1' ? '1 straight cut' : `${cuts} straight cuts`}, mm from the lower left corner`,
    along: (at: string, from: string, to: string) => `along the grain, ${at} up from the lower edge, from ${from} to ${to}`,
    across: (at: string, from: string, to: string) => `across the grain, ${at} from the left edge, from ${from} to ${to}`,
    remnants: 'REMNANTS to keep, along x across the grain',
    none: 'none',
    several: (count: string, size: string) => `${count} of ${size}`,
  },
  sizes: {
    title: (page: string, pages: string) => `SIZES AND BAGS, page ${page} of ${pages}`,
    invented: '(invented)',
    head: { id: 'SIZE', size: 'LENGTH x WIDTH, mm', quantity: 'HOW MANY', serves: 'SERVES', codes: 'FOR' },
    serves: { all: 'all', withoutLittle: 'index to ring', withLittle: 'with the little finger' },
    singly: 'singly',
    bag: (size: string, count: string) => `${size} mm, ${count} of them`,
    bagSingly: (size: string) => `singly, ${size} mm`,
    trim: (mm: string) => `its trim is ${mm} mm shorter than drawn`,
    cutOff: (mm: string) => `cut off ${mm} mm at the finishing end`,
    cutBack: (list: string) => `cut back, mm: ${list}`,
  },
  chart: {
    title: 'Stock sizes: cut off on average over the number of sizes',
    heading: 'WHERE MORE SIZES STOP PAYING',
    across: 'NUMBER OF SIZES',
    up: 'CUT OFF ON AVERAGE, mm',
    ringed: (count: string) => `ringed: the ${count === '1' ? 'one size' : `${count} sizes`} chosen`,
    served: (from: string, percent: string) => `${from}, ${percent} % served`,
  },
  /** What sizes rest on. */
  from: {
    lengths: (count: string, file: string) => `${count} measured lengths of ${file}`,
    norms: (count: string, group: string, seed: string, again: string, block: string) =>
      `${count} ${group} hands drawn from norms (seed ${seed}, ${again} drawn again), ${block}`,
    table: (count: string, file: string, block: string) => `${count} hands of ${file}, ${block === '' ? 'strip by each target' : block}`,
    group: { female: 'female', male: 'male', mixed: 'mixed' },
  },
};
