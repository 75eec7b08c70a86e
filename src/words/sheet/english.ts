/** What a printed page says of itself: how to print it, what is on it, how tiles are joined. Lengths and counts come as text. */
export const sheetEnglish = {
  page: (page: string, pages: string) => `page ${page} of ${pages}`,
  hand: { left: 'LEFT HAND', right: 'RIGHT HAND' },
  date: (date: string) => `date ${date}`,
  invented: 'INVENTED DEMO, nobody was measured',
  print: 'Print at 100 %, actual size, nothing fitted to the page. Measure both bars before use.',
  corrected: (across: string, along: string) =>
    `CORRECTED for one printer: bars that measured ${across} mm across and ${along} mm along now print at 100 mm. For that printer and its settings only.`,
  across: 'ACROSS: 100 mm from end tick to end tick',
  along: 'ALONG: 100 mm from end tick to end tick',
  card: 'Lay a bank card here: it must just cover the outline',
  pattern: 'pattern at 1:1',
  tile: (row: string, rows: string, column: string, columns: string) => `row ${row} of ${rows}, column ${column} of ${columns}`,
  join: 'Cut one of two neighbours along its frame, lay crosses of the same letter on each other against the light, tape.',
  making: 'making',
  stepByStep: 'step by step',
  plan: (factor: string) => `plan of the sheet, drawn ${factor} times its size: to be read, not to be cut by`,
  heading: {
    facts: 'What it is',
    lines: 'Lines',
    steps: 'Making, in this order',
    checks: 'Fit check',
    cautions: 'Cautions',
    ruler: (title: string) => `${title}: cut list for a ruler`,
  },
  trueSize: 'True size.',
  enlarged: (factor: string) => `Drawn ${factor} times true size.`,
  size: (length: string, width: string, from: string) => `${length} mm long, ${width} mm wide.${from === '' ? '' : ` Marks in ${from}:`}`,
  edges: (low: string, high: string) => `${low} to ${high}`,
  /** Words beside a drawing for a machine. */
  machine: {
    drawing: (width: string, height: string) =>
      `The drawing is ${width} x ${height} mm; its lower left corner is 0,0. Check that size at the machine before cutting.`,
    onSheet: (left: string, low: string) =>
      `On the sheet of plastic it begins ${left} mm from the left edge and ${low} mm from the lower edge.`,
    size: (length: string, width: string) => `${length} long, ${width} wide`,
    facts: 'FACTS',
    steps: 'STEPS',
    check: 'CHECK',
    cautions: 'CAUTIONS',
    kerf: (kerf: string, half: string) =>
      `kerf ${kerf} mm is already in the outlines (outlines grown, holes shrunk by ${half} mm): switch off the machine's own kerf offset.`,
    noKerf: 'kerf 0 mm: the outlines are the true edges.',
    kerfInside: (kerf: string) => `KERF ${kerf} mm IS IN THE OUTLINES: NO MACHINE OFFSET`,
    cutter: (id: string, title: string) => `cutter ${id}: ${title}.`,
    /** Of the profiles that come with the program; one of the clinic's own keeps its title. */
    profile: {
      knife: 'Drag or oscillating knife with a pen: the pen draws all marks, then the knife cuts',
      'laser-if-allowed': 'Laser, only for a sheet whose safety data sheet allows it: all marks are scored, then the outlines are cut',
      'pen-and-scissors': 'A pen draws everything, the outlines last; a person cuts with scissors on the warm sheet',
    },
    tools: (marks: string, cuts: string, info: string, partByPart: boolean) =>
      `order of the tools: ${partByPart ? 'part by part, in each ' : ''}${marks === '' ? '' : `${marks}, then `}${cuts}, holes before the outline around them${info === '' ? '' : `; ${info} is for people`}.`,
    leadIns: (mm: string) => `lead-ins: quarter arcs of ${mm} mm in the waste.`,
    bridges: (count: string, mm: string) => `bridges: ${count} of ${mm} mm hold each part; cut them through by hand.`,
    sharedEdges: (count: string) => `shared edges: ${count}, each cut once.`,
  },
};
