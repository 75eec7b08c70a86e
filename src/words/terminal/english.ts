/** What commands print of what they made. Lengths, angles and counts come as text; a one of something as "1". */
export const terminalEnglish = {
  next: 'next',
  file: {
    words: 'the words that go with it',
    drawing: (width: string, height: string) => `drawing ${width} x ${height} mm`,
    chart: (width: string, height: string) => `chart ${width} x ${height} mm`,
    pages: (pages: string, paper: string) => `${pages === '1' ? '1 page' : `${pages} pages`}, ${paper}`,
    portrait: 'portrait',
    landscape: 'landscape',
    tiled: 'pattern in tiles',
    strip: (length: string, width: string) => `strip ${length} x ${width} mm`,
    paperStrip: 'paper strip',
    trueSize: 'at 1:1',
  },
  /** Why this arrangement; `fingers` are those that it holds otherwise than their neighbours. */
  why: {
    itself: (finger: string, lacks: string, wanted: string, place: string) =>
      `the ${finger} lacks PIP ${lacks}: its MP joint is held in relative ${wanted}, so the ${finger} itself is ${place}`,
    byOthers: (finger: string, lacks: string, wanted: string, count: string, fingers: string, two: boolean, place: string) =>
      `the ${finger} lacks PIP ${lacks}: its MP joint is held in relative ${wanted}, so in ${count} ${two ? 'the two middle fingers are' : `the ${fingers} is`} ${place} and the ${finger} is held the other way by comparison`,
    named: 'named by --block',
    read: (file: string) => `read from ${file}`,
    redrawn: (file: string) => `drawn again from ${file}`,
  },
  /** At the beginning of a line: at most 11 letters. */
  label: {
    strip: 'strip',
    relief: 'relief',
    freePip: 'free PIP',
    loop: 'loop',
    estimated: 'ESTIMATED',
    angle: 'angle',
    palm: 'palm',
    wrist: 'wrist',
    strap: (id: string) => `strap ${id}`,
  },
  strip: (length: string, low: string, high: string, read: boolean, width: string, closure: string) =>
    `${length} mm long (95 % band ${low} to ${high} mm${read ? ', of the paper reading' : ''}), ${width} mm wide, ${closure}`,
  relief: (depth: string, finger: string) => `${depth} mm off the distal edge, palmar to the ${finger}`,
  freePip: (list: string) => `${list} degrees of flexion predicted`,
  loop: (digits: string, round: string, ring: string) => `${digits}: ${round} mm round inside, ring size ${ring}`,
  plate: {
    angle: (degrees: string, low: string, high: string) =>
      `MP ${degrees} degrees (${low} to ${high} possible; a starting point, common practice, no source: the clinician decides)`,
    palm: (broad: string, round: string, thick: string) => `${broad} broad, ${round} round, ${thick} mm thick`,
    face: (width: string, length: string, form: string, bend: string, corner: string) =>
      `${width} x ${length} mm flat, bend ${form}, ${bend} mm long, tightest corner ${corner} mm`,
    fold: (least: string, worst: string, finger: string, miss: string, swing: string, stretch: string, shear: string) =>
      `folded along its marks on the modelled hand: ${least} to ${worst} mm off the skin, most at the ${finger}; MP joints within ${miss} mm of the bend, fingers pushed aside ${swing} degrees, sheet stretched ${stretch} %, sheared ${shear} degrees`,
    bend: (asked: string, costs: string) => `bend ${asked}: ${costs}`,
    form: { auto: 'auto', straight: 'straight', split: 'split', kinked: 'kinked' },
    cost: {
      stretch: (percent: string) => `stretches ${percent} %`,
      shear: (degrees: string) => `shears ${degrees} degrees`,
      miss: (mm: string) => `misses ${mm} mm`,
      swing: (degrees: string) => `pushes aside ${degrees} degrees`,
      none: 'costs nothing',
      notToBeHad: 'not to be had',
    },
    free: (pip: string, thumb: string) =>
      `free: ${pip} mm to the PIP joints, ${thumb === '' ? 'no wing at the thumb' : `${thumb} mm to the thumb web`}`,
    shortened: (digit: string, mm: string) =>
      `${digit}: ${mm} mm shorter than its PIP joint allows, so that the step to its neighbour is round`,
    wrist: (mm: string) => `${mm} mm free to the wrist crease`,
    strap: (width: string, length: string, where: string) => `${width} wide, ${length} long, ${where}`,
  },
  shelf: {
    none: (length: string, width: string) => `nothing on the shelf serves ${length} x ${width} mm: cut it anew`,
    take: (id: string, length: string, width: string, cutOff: string) =>
      `from the shelf: ${id}, ${length} x ${width} mm: cut off ${cutOff} mm at the finishing end`,
  },
  sheets: {
    pieces: (pieces: string, verdict: string) => `${pieces === '1' ? '1 piece' : `${pieces} pieces`}: ${verdict}`,
    enough: 'no new sheet: the remnants are enough',
    count: (sheets: string) => (sheets === '1' ? '1 new sheet' : `${sheets} new sheets`),
    proved: (count: string, gap: string, margin: string) =>
      `${count}, and fewer is impossible with a gap of ${gap} and a margin of ${margin} mm`,
    bound: (count: string, atLeast: string, gap: string, margin: string) =>
      `${count}, lower bound ${atLeast} with a gap of ${gap} and a margin of ${margin} mm`,
    inAll: (cuts: string) => `${cuts === '1' ? '1 straight cut' : `${cuts} straight cuts`} with shears in all`,
    narrower: (gap: string, sheets: string, shears: boolean) =>
      `with a gap of ${gap} mm ${sheets === '1' ? '1 new sheet' : `${sheets} new sheets`} would do${shears ? ' (--shears cuts so)' : ''}`,
    sheet: (number: string, remnant: string, parts: string, used: string, cuts: string) =>
      `sheet ${number}   ${remnant === '' ? 'new' : `remnant ${remnant}`}, ${parts === '1' ? '1 part' : `${parts} parts`}, ${used} % used, ${cuts}`,
    cuts: (cuts: string) => `${cuts === '1' ? '1 cut' : `${cuts} cuts`} with shears`,
    nested: (cuts: string) => `plates nested: cut along the outlines, ${cuts === '1' ? '1 cut' : `${cuts} cuts`} with shears for the rests`,
    noRemnants: 'no remnants worth keeping',
    remnants: (list: string, more: string) => `remnants   ${list}${more === '' ? '' : `, and ${more} more`}`,
  },
  sizes: {
    from: (from: string, invented: boolean) => `From ${from}${invented ? ' (invented)' : ''}`,
    /** Each over its column, right-aligned but for the last. */
    column: { sizes: 'sizes', served: 'served %', cutOff: 'cut off mm', cutOffShare: 'cut off %', lengths: 'lengths mm' },
    chosen: (count: string) => `${count === '1' ? '1 size' : `${count} sizes`}, and how many to cut:`,
    serves: (served: string, all: string, which: string) => `(serves ${served} of ${all}, ${which})`,
    singly: (count: string) => `${count} longer ones are cut singly`,
    pinned: (width: string) =>
      `strips are ${width} mm wide, where nobody says otherwise; draw and batch make them so with --width ${width}`,
    useTrim: (mm: string) => `a size may be ${mm} mm shorter than the strip as drawn: so much of its trim is given up`,
    best: (byLength: string, bySheets: string, sheets: boolean) =>
      `best in length they take ${byLength} sheets, best in sheets ${bySheets}; taken are those best in ${sheets ? 'sheets' : 'length'}`,
    leftOut: (out: string, all: string, percent: string, codes: string) =>
      `${out} of ${all} hands (${percent} %) have no strip and are left out (${codes})`,
    others: 'the sizes speak for the others only',
    /** `groups`: "female 3 of 40". */
    bias: (groups: string) =>
      `these are hands round which such a strip would hold nothing (${groups}): the sizes lean to the others; a smaller --differential leaves out fewer`,
    group: (sex: string, out: string, hands: string) => `${sex} ${out} of ${hands}`,
  },
  batch: {
    made: (hands: string, before: string, wrong: string) =>
      `${hands === '1' ? '1 hand' : `${hands} hands`} in the cut list${before === '' ? '' : `, ${before} of them by an earlier run`}; ${wrong === '1' ? '1 row' : `${wrong} rows`} wrong`,
    files: (files: string, folder: string) => `${files === '1' ? '1 pattern file' : `${files} pattern files`} written into ${folder}`,
  },
};
