/** Words on a strip, beside it and about it. Lengths and angles come as text; `digit` is a short name, `finger` one in a sentence. */
export const patternEnglish = {
  /** On the plastic itself, in capitals; two words of a pair stand on the two sides of a line. */
  lettering: {
    digit: { index: 'INDEX', long: 'LONG', ring: 'RING', little: 'LITTLE' },
    aspect: { dorsal: 'DORSAL', palmar: 'PALMAR' },
    border: { radial: { first: 'RADIAL', second: 'BORDER' }, ulnar: { first: 'ULNAR', second: 'BORDER' } },
    web: 'WEB',
    seam: 'SEAM',
    overlap: 'OVERLAP',
    trim: 'TRIM',
    distal: 'DISTAL',
    hand: { left: 'LEFT HAND', right: 'RIGHT HAND' },
    handShort: { left: 'LEFT', right: 'RIGHT' },
    outside: 'OUTSIDE',
    up: 'UP',
  },
  /** First of the cautions where nobody answered the question. */
  stopUnasked:
    'STOP SIGNS WERE NOT ASKED before this was printed: ask first (wound or pins, infection, new numbness, pale or blue or cold finger, suspected CRPS, new loss of active motion, unstable or newly deformed joint, acute inflammation).',
  distalUp: 'distal edge up',
  distalArrow: 'arrow to the distal edge',
  corner: 'corner mark: distal edge, starting end',
  mark: {
    midline: (digit: string, aspect: string, layer: string) => `${digit} midline, ${aspect}, ${layer}`,
    web: (one: string, other: string, layer: string) => `web ${one}-${other}, ${layer}`,
    border: (border: string, finger: string) => `${border} of the ${finger}`,
    seamStart: 'seam, starting end',
    seamEnd: 'seam, finishing end',
    overlapStart: 'overlap ends, starting end',
    overlapEnd: 'overlap begins, finishing end',
    trim: 'trim to here when it fits',
    end: 'end of the strip',
  },
  title: (code: string, side: string, block: string) => `${code}, ${side} hand: ${block}`,
  part: (block: string, side: string) => `strip, ${block}, ${side} hand`,
  square: 'square of 50 mm to check the scale',
  measureFirst: 'measure it first',
  invented: '(invented demo)',
  choice: {
    tacked: 'tacked',
    spanning: 'spanning',
    lap: 'lap',
    opening: 'lap, left to open, with a strap',
    pinch: 'pinch',
    staggered: 'staggered',
    straight: 'straight',
  },
  fact: {
    differential: (degrees: string, closure: string) => `differential ${degrees} degrees, ${closure}`,
    strip: (width: string, auto: boolean, outline: string, thickness: string) =>
      `strip ${width} wide${auto ? ' (auto)' : ''}, ${outline}, from low-temperature sheet ${thickness} thick`,
    length: (length: string, below: string, above: string, read: boolean) =>
      `flat length ${length} mm (95 % band -${below} to +${above}${read ? ', of the paper reading' : ''})`,
    seam: (seam: string, allowance: string, trim: string, stretch: string) =>
      `${seam} seam ${allowance}${trim === '' ? '' : `, trim ${trim}`}${stretch === '' ? '' : `, stretch ${stretch} %`}`,
    date: (date: string) => `date ${date}`,
    loop: (digits: string, length: string, ring: string) => `loop ${digits}: ${length} round inside (ring size ${ring})`,
    estimated: (list: string) => `ESTIMATED, not measured: ${list}`,
    curved: (degrees: string, fingers: string) =>
      `curved by ${degrees} degrees for the taper of ${fingers}: cut along the line, not by ruler`,
    noRoom: (list: string) => `No room on the strip for: ${list}`,
  },
  marks: 'MARKS, mm from the starting end (corner mark)',
  legend: {
    cut: 'cut',
    dorsal: 'finger midline, strip runs dorsal',
    palmar: 'finger midline, strip runs palmar',
    border: 'turn round a border finger',
    web: 'web space',
    limit: 'end of the overlap; trim',
  },
  section: {
    heading: (side: string) => `Section, ${side} hand`,
    capitals: { left: 'SECTION, LEFT HAND', right: 'SECTION, RIGHT HAND' },
    caption: 'Seen from the fingertips, dorsal up; the inner layer lies against the held digits.',
    first: 'seen from the fingertips, dorsal up;',
    second: 'inner layer against the held digits',
    digit: (finger: string, place: string) => `${finger}, ${place}`,
    strip: 'strip, its two faces',
    seam: 'seam',
    seamOuter: 'seam, outer layer',
  },
  cutList: {
    strip: 'Strip',
    from: 'mm from the starting end (corner mark)',
    curved:
      'The strip is curved for fingers that taper: cut along the drawn line. The figures are those of the strip before it is curved; along it they are true where each finger was measured.',
    edges: 'Edges: mm from the line of the foremost web, distal +; straight between the rows, corners round.',
    relief: (finger: string, depth: string) =>
      `Palmar to the ${finger}, from one of its sides to the other, the distal edge is cut back by ${depth} (at the midline), level, in round steps.`,
  },
  wedge: (degrees: string) => `wedge of ${degrees} degrees`,
  degrees: (degrees: string) => `${degrees} degrees`,
  gauge: (degrees: string) => `Differential, ${degrees} degrees: cut out, hold between the digits`,
  way: {
    pass: (aspect: string, digit: string) => `${aspect} to ${digit}`,
    turn: { radial: 'round the radial side', ulnar: 'round the ulnar side' },
  },
  motion: { extension: 'extension', flexion: 'flexion' },
  step: {
    measure: 'Measure. Both 100 mm bars and the card outline on this sheet must be true; compare a few measurements with the hand.',
    paper:
      'Paper trial. Weave a paper strip (“Paper trial” on the page, or draw --paper-trial) round the fingers, read its scale and draw this strip again with the reading, before plastic is heated.',
    paperDone: (reading: string) => `Paper trial: done, read ${reading} mm; this strip is drawn for that reading.`,
    cut: (thickness: string) =>
      `Cut. Outside up, distal edge up (at held digits the outside touches skin): cut the outline from sheet ${thickness} thick and carry the marks over, the side of the hand among them.`,
    heat: "Heat in a water bath of 65 to 71 C, less than a minute; the sheet's own instructions come first.",
    blot: 'Blot dry, wait, and test it on your own skin before it goes onto the patient.',
    drape: (held: string, degrees: string, motion: string, way: string) =>
      `Drape, with ${held} held in about ${degrees} degrees more MP ${motion} than the neighbours. From the corner mark the strip runs: ${way}, and back to the seam. Do not stretch it more than planned.`,
    lap: (allowance: string) => `lay the ends over each other by ${allowance}, seam mark on seam mark`,
    opening: (allowance: string) =>
      `lay the ends over each other by ${allowance}, seam mark on seam mark, with film or paper between so that they do not bond; once cool, fit a strap that closes them`,
    pinch: (allowance: string) => `pinch the tabs of ${allowance} together at the seam marks`,
    seam: (close: string, shift: string, tack: string) =>
      `Seam: ${close}.${shift} Uncoated sheet bonds to itself when dry and hot; scrape or wipe the coating off coated sheet first.${tack}`,
    shift: (slope: string) =>
      ` For each mm that it closes longer or shorter than drawn, the edges of the two ends part by ${slope} mm along the hand; trim them even.`,
    tack: (held: string) => ` Press the outer layer onto the inner one at the middle of ${held} and bond it there.`,
    spanning: ' Leave the outer layer taut across the held digits.',
    cool: 'Cool on the hand until hard, the digits still held.',
    check: 'Check full PIP flexion and full PIP extension of every digit, then take the strip off and put it on again.',
    trim: 'Trim the spare length and round every edge and corner; nothing square or sharp lies on skin.',
  },
  check: {
    bars: 'Bars measured: across ........ mm, along ........ mm; 99.5 to 100.5 is good.',
    pencil:
      'Before making, the pencil test: a pencil woven over and under the fingers as the strip will run. Active PIP motion is better: yes / no.',
    mp: (held: string, motion: string, planned: string) =>
      `MP of ${held} against the neighbours: ........ degrees of ${motion} (planned ${planned}).`,
    flexion: (predicted: string, blanks: string) =>
      `PIP flexion free${predicted === '' ? '' : ` (predicted to ${predicted} degrees)`}: ${blanks}.`,
    extension: (blanks: string) => `PIP extension free: ${blanks}.`,
    active: (finger: string) => `Active PIP motion of the ${finger}, without ........ with ........ degrees.`,
    clear: 'Distal edge clear of every palmar PIP crease, proximal edge clear of the webs (2 to 3 mm).',
    onAndOff: 'Goes on and off over the PIP joints without force.',
    edges: 'Edges round; no rocking, no pinching, no blanching.',
    skin: 'Skin looked at after about 20 minutes of wear: redness gone within 15 to 20 minutes.',
  },
  trial: {
    title: (code: string, side: string, block: string) => `${code}, ${side} hand: paper strip, ${block}`,
    part: (block: string, side: string) => `paper strip, ${block}, ${side} hand`,
    tick: (mm: string) => `${mm} mm on the scale`,
    heading: 'PAPER STRIP',
    settings: (width: string, degrees: string, closure: string, date: string) =>
      `width ${width}, differential ${degrees} degrees, ${closure}, date ${date}`,
    length: (length: string) => `from end to zero ${length} mm`,
    first: '1. Measure the 50 mm square, then cut the strip from plain paper (80 g).',
    bars: '1. Measure the two bars, then cut the strip from this page (80 g paper).',
    second: '2. Outside up: weave it round the fingers as the strip will run, snug, not tight, the fingers held at the differential.',
    third: '3. Read on the scale where the starting end lies. + is longer than drawn.',
    fourth: '4. Draw the strip again with this reading, in its field on the page or by --paper-reading.',
    reading: 'Reading: ............ mm',
  },
};

/** Words on a plate, beside it and about it. Lengths and angles come as text. */
export const plateEnglish = {
  /** A plate of the library by its id; one of the clinic's own keeps its title. */
  title: {
    'plate-dorsal': 'MP dorsal plate',
    'plate-palmar': 'MP palmar plate',
    'plate-both': 'MP immobilisation, dorsal and palmar plate',
    'mp-extension-block': 'MP-extension block, palmar plate across four digits (hook fist)',
    'mp-immobilisation-dorsal': 'MP immobilisation, dorsal plate, four digits',
    'mp-immobilisation-palmar': 'MP immobilisation, palmar plate, four digits',
    'single-digit-with-neighbours': 'MP immobilisation of one digit with its neighbours, dorsal plate',
  },
  lettering: {
    face: { dorsal: 'DORSAL PLATE', palmar: 'PALMAR PLATE' },
    skin: 'SKIN SIDE DOWN',
    bend: (degrees: string) => `MP BEND ${degrees}`,
    bendShort: (degrees: string) => `MP ${degrees}`,
    ulnar: 'ULNAR',
    thumb: 'THUMB',
    wrist: 'WRIST: FLARE',
  },
  name: (title: string, holds: string) => `${title}, ${holds}`,
  holds: (degrees: string, digits: string) => `MP ${degrees} degrees, ${digits}`,
  drawing: (code: string, side: string, name: string) => `${code}, ${side} hand: ${name}`,
  part: (face: string, side: string) => `${face} plate, ${side} hand`,
  left: (face: string, words: string) => `${face}: ${words}`,
  midlineOf: (digit: string) => `${digit} midline`,
  line: {
    'mp-bend': 'MP bend line',
    'bend-limit': 'the bend begins and ends here',
    midline: 'midline of a finger',
    fold: 'mid-lateral line: wing or side wall folds here',
    flare: 'flare the edge away from the skin',
    strap: 'hook for a strap',
    trim: 'trim to here when it fits',
  },
  hookAt: { radial: (strap: string) => `hook for strap ${strap}, radial`, ulnar: (strap: string) => `hook for strap ${strap}, ulnar` },
  sample: (words: string) => `sample: ${words}`,
  fact: {
    holds: (holds: string) => `${holds}   (0 to 90 possible: the clinician decides)`,
    sheet: (thickness: string, off: string) => `low-temperature sheet ${thickness} thick, ${off} off the skin`,
    palm: (broad: string, round: string, thick: string) => `palm ${broad} broad, ${round} round, so ${thick} thick`,
    face: (face: string, wide: string, bend: string, form: string, corner: string) =>
      `${face} plate: hand part ${wide} wide, bend ${bend} long, ${form}, tightest corner ${corner}`,
    bend: { straight: 'one straight line', split: 'split between ring and little', kinked: 'kinked at each joint' },
    wrist: (free: string) => `wrist free: ${free} to the wrist crease`,
    noRoom: (list: string) => `No room on the plate for: ${list}`,
    straps: 'STRAPS to cut (hook and loop)',
    strap: (id: string, width: string, length: string, where: string) => `${id}   ${width} wide, ${length} long, ${where}`,
  },
  lines: 'LINES',
  moulding: 'MOULDING',
  cautionsHeading: 'CAUTIONS',
  gauge: {
    first: 'ANGLE GAUGE: cut out of the paper,',
    second: 'lay the ring on the MP joint from the side',
    title: (degrees: string) => `Angle gauge, ${degrees} degrees: cut out, ring on the MP joint from the side`,
    mark: (degrees: string) => `gauge of the MP angle, ${degrees} degrees`,
    axis: 'MP axis and the middle of both arms',
    arm: (degrees: string) => `MP ${degrees} degrees`,
    metacarpal: 'METACARPAL',
    finger: 'FINGER',
  },
  strap: {
    title: (id: string) => `Strap ${id}, hook and loop`,
    goes: (where: string) => `Goes ${where}.`,
    hand: 'round the hand, through the thumb web',
    fingers: (names: string) => `round the proximal phalanx, ${names}`,
    range: (first: string, last: string) => `${first} to ${last}`,
  },
  check: {
    mp: (planned: string) => `MP joints at ........ degrees by the gauge (planned ${planned}).`,
    free: 'Wrist bends freely both ways, thumb reaches across, digits that are not held make a full fist.',
    clear: 'Proximal edge clear of the wrist crease and the ulnar head; thumb web clear; edges round and flared.',
    straps: 'Straps hold without pulling; no rocking, no pinching, no blanching.',
  },
  paperByBars: 'Print at 100 %, measure both bars, cut the paper out and lay it on the hand at the angle before any sheet is cut.',
  /** In order. Common practice, no source; the sheet's own instructions and the treating clinician come first. */
  step: {
    paper: 'Print at 100 %, measure the 50 mm square, cut the paper out and lay it on the hand at the angle before any sheet is cut.',
    pad: 'Pad first: put the padding on the ulnar head if the edge comes near it, on the metacarpal heads and on every bony or tender point, and mould over it. Padding under a finished plate makes it tight.',
    heat: 'Mark on the sheet what the pattern marks, cut, heat as the sheet asks for (65 to 71 C water, under a minute for most), blot it dry.',
    hold: 'Two pairs of hands: one holds the MP joints at the angle with the gauge against the side, wrist straight, the other drapes. Gravity helps: dorsal plate with the palm down, palmar plate with the palm up.',
    bend: 'Bend along the MP bend line first, then lay the hand part down, then wrap wings and side walls. Stroke, do not press: finger prints are pressure points.',
    set: 'Hold the gauge against it until it has set. Then flare the wrist edge, the thumb web and every edge beside a joint that stays free.',
    check:
      'Check: MP joints at the angle, wrist and thumb free, PIP joints through their whole motion in both directions, free digits to a full fist. Trim what stops them, round what you trimmed.',
    straps: 'Put on the hooks and cut the straps after the list. Straps hold, they do not pull.',
  },
  caution: {
    heat: 'A larger sheet holds more heat and more water than a strip: blot longer, test it on your own skin, protect the forearm.',
    pressure:
      'Look at the skin over the metacarpal heads, the ulnar head, the radial border of the index finger and in the thumb web: there plates press first.',
    stiff:
      'MP joints held straight get stiff: hold them straight no longer than the plan says, and take the plate off for exercise when it says so.',
    angle: 'The MP angle is a starting point for the clinician to judge, common practice without a published source, never a prescription.',
  },
};
