import { fixed, plain } from '../units/number.ts';
import type { Language, Translations } from './language.ts';
import { withDecimalSign } from './speech.ts';

/** What a printed page says of itself: how to print it, what is on it, how tiles are joined. Lengths and counts come as text. */
const sheetEnglish = {
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

const sheetGerman: Translations<typeof sheetEnglish> = {
  page: (page, pages) => `Seite ${page} von ${pages}`,
  hand: { left: 'LINKE HAND', right: 'RECHTE HAND' },
  date: (date) => `Datum ${date}`,
  invented: 'ERFUNDENES BEISPIEL, niemand wurde gemessen',
  print: 'Mit 100 % drucken, tatsächliche Größe, nichts anpassen. Vor Gebrauch beide Balken nachmessen.',
  corrected: (across, along) =>
    `KORRIGIERT für einen Drucker: Balken, die quer ${across} mm und längs ${along} mm maßen, drucken jetzt mit 100 mm. Nur für diesen Drucker und seine Einstellungen.`,
  across: 'QUER: 100 mm von Endstrich zu Endstrich',
  along: 'LÄNGS: 100 mm von Endstrich zu Endstrich',
  card: 'Eine Bankkarte hier auflegen: Sie deckt den Umriss gerade ab',
  pattern: 'Schnittmuster 1:1',
  tile: (row, rows, column, columns) => `Reihe ${row} von ${rows}, Spalte ${column} von ${columns}`,
  join: 'Von zwei Nachbarn einen am Rahmen abschneiden, Kreuze mit gleichem Buchstaben gegen das Licht aufeinanderlegen, kleben.',
  making: 'Anfertigen',
  stepByStep: 'Schritt für Schritt',
  plan: (factor) => `Plan der Platte, ${factor}-fach gezeichnet: zum Lesen, nicht zum Schneiden`,
  heading: {
    facts: 'Was es ist',
    lines: 'Linien',
    steps: 'Anfertigen, in dieser Reihenfolge',
    checks: 'Sitz prüfen',
    cautions: 'Vorsicht',
    ruler: (title) => `${title}: Schnittliste fürs Lineal`,
  },
  trueSize: 'Wahre Größe.',
  enlarged: (factor) => `In ${factor}-facher Größe gezeichnet.`,
  size: (length, width, from) => `${length} mm lang, ${width} mm breit.${from === '' ? '' : ` Marken in ${from}:`}`,
  edges: (low, high) => `${low} bis ${high}`,
  machine: {
    drawing: (width, height) =>
      `Die Zeichnung ist ${width} x ${height} mm groß; ihre linke untere Ecke ist 0,0. Diese Größe an der Maschine prüfen, bevor geschnitten wird.`,
    onSheet: (left, low) => `Auf der Platte beginnt sie ${left} mm vom linken und ${low} mm vom unteren Rand.`,
    size: (length, width) => `${length} lang, ${width} breit`,
    facts: 'MASSE',
    steps: 'SCHRITTE',
    check: 'PRÜFEN',
    cautions: 'VORSICHT',
    kerf: (kerf, half) =>
      `Schnittbreite ${kerf} mm ist in den Umrissen schon enthalten (Umrisse um ${half} mm größer, Löcher um ebenso viel kleiner): Versatz der Maschine ausschalten.`,
    noKerf: 'Schnittbreite 0 mm: Die Umrisse sind die wahren Kanten.',
    kerfInside: (kerf) => `SCHNITTBREITE ${kerf} mm IST ENTHALTEN: KEIN VERSATZ AN DER MASCHINE`,
    cutter: (id, title) => `Schneidgerät ${id}: ${title}.`,
    profile: {
      knife: 'Schlepp- oder Schwingmesser mit Stift: Der Stift zeichnet alle Marken, dann schneidet das Messer',
      'laser-if-allowed':
        'Laser, nur für eine Platte, deren Sicherheitsdatenblatt es erlaubt: Alle Marken werden geritzt, dann die Umrisse geschnitten',
      'pen-and-scissors': 'Ein Stift zeichnet alles, die Umrisse zuletzt; ein Mensch schneidet mit der Schere in der warmen Platte',
    },
    tools: (marks, cuts, info, partByPart) =>
      `Reihenfolge der Werkzeuge: ${partByPart ? 'Teil für Teil, in jedem ' : ''}${marks === '' ? '' : `${marks}, dann `}${cuts}, Löcher vor dem Umriss um sie${info === '' ? '' : `; ${info} ist für Menschen`}.`,
    leadIns: (mm) => `Einläufe: Viertelbögen von ${mm} mm im Verschnitt.`,
    bridges: (count, mm) => `Stege: ${count} von ${mm} mm halten jedes Teil; von Hand durchschneiden.`,
    sharedEdges: (count) => `Gemeinsame Kanten: ${count}, jede einmal geschnitten.`,
  },
};

const sheetSpanish: Translations<typeof sheetEnglish> = {
  page: (page, pages) => `página ${page} de ${pages}`,
  hand: { left: 'MANO IZQUIERDA', right: 'MANO DERECHA' },
  date: (date) => `fecha ${date}`,
  invented: 'EJEMPLO INVENTADO, no se midió a nadie',
  print: 'Imprimir al 100 %, tamaño real, sin ajustar a la página. Medir las dos barras antes de usar.',
  corrected: (across, along) =>
    `CORREGIDO para una impresora: las barras que medían ${across} mm a lo ancho y ${along} mm a lo largo se imprimen ahora a 100 mm. Solo para esa impresora y sus ajustes.`,
  across: 'A LO ANCHO: 100 mm de marca a marca',
  along: 'A LO LARGO: 100 mm de marca a marca',
  card: 'Ponga aquí una tarjeta bancaria: debe cubrir justo el contorno',
  pattern: 'patrón a 1:1',
  tile: (row, rows, column, columns) => `fila ${row} de ${rows}, columna ${column} de ${columns}`,
  join: 'Corte uno de dos vecinos por su marco, ponga las cruces de la misma letra una sobre otra a contraluz y pegue.',
  making: 'elaboración',
  stepByStep: 'paso a paso',
  plan: (factor) => `plano de la lámina, dibujado a ${factor} de su tamaño: para leer, no para cortar`,
  heading: {
    facts: 'Qué es',
    lines: 'Líneas',
    steps: 'Elaboración, en este orden',
    checks: 'Comprobar el ajuste',
    cautions: 'Precauciones',
    ruler: (title) => `${title}: lista de corte con regla`,
  },
  trueSize: 'Tamaño real.',
  enlarged: (factor) => `Dibujado a ${factor} veces su tamaño.`,
  size: (length, width, from) => `${length} mm de largo, ${width} mm de ancho.${from === '' ? '' : ` Marcas en ${from}:`}`,
  edges: (low, high) => `${low} a ${high}`,
  machine: {
    drawing: (width, height) =>
      `El dibujo mide ${width} x ${height} mm; su esquina inferior izquierda es 0,0. Compruebe ese tamaño en la máquina antes de cortar.`,
    onSheet: (left, low) => `En la lámina empieza a ${left} mm del borde izquierdo y a ${low} mm del borde inferior.`,
    size: (length, width) => `${length} de largo, ${width} de ancho`,
    facts: 'DATOS',
    steps: 'PASOS',
    check: 'COMPROBAR',
    cautions: 'PRECAUCIONES',
    kerf: (kerf, half) =>
      `ancho de corte ${kerf} mm ya incluido en los contornos (contornos ${half} mm mayores, agujeros otro tanto menores): apague la compensación de la máquina.`,
    noKerf: 'ancho de corte 0 mm: los contornos son los bordes verdaderos.',
    kerfInside: (kerf) => `ANCHO DE CORTE ${kerf} mm YA INCLUIDO: SIN COMPENSACIÓN EN LA MÁQUINA`,
    cutter: (id, title) => `cortadora ${id}: ${title}.`,
    profile: {
      knife: 'Cuchilla de arrastre u oscilante con lápiz: el lápiz dibuja todas las marcas, después corta la cuchilla',
      'laser-if-allowed':
        'Láser, solo para una lámina cuya ficha de seguridad lo permita: se graban todas las marcas, después se cortan los contornos',
      'pen-and-scissors': 'Un lápiz lo dibuja todo, los contornos al final; una persona corta con tijeras en la lámina caliente',
    },
    tools: (marks, cuts, info, partByPart) =>
      `orden de las herramientas: ${partByPart ? 'pieza por pieza, en cada una ' : ''}${marks === '' ? '' : `${marks}, después `}${cuts}, los agujeros antes que el contorno que los rodea${info === '' ? '' : `; ${info} es para las personas`}.`,
    leadIns: (mm) => `entradas: cuartos de arco de ${mm} mm en el sobrante.`,
    bridges: (count, mm) => `puentes: ${count} de ${mm} mm sujetan cada pieza; córtelos a mano.`,
    sharedEdges: (count) => `bordes comunes: ${count}, cada uno cortado una vez.`,
  },
};

export type SheetWords = Translations<typeof sheetEnglish>;

const WORDS: Readonly<Record<Language, SheetWords>> = { en: sheetEnglish, de: sheetGerman, es: sheetSpanish };

/** The words of pages in a language, with its numbers. */
export interface SheetSpeech {
  readonly w: SheetWords;
  readonly number: (value: number, decimals: number) => string;
  /** With all its decimals, for columns. */
  readonly fixed: (value: number, decimals: number) => string;
}

export function sheetSpeech(language: Language): SheetSpeech {
  return {
    w: WORDS[language],
    number: (value, decimals) => withDecimalSign(plain(value, decimals), language),
    fixed: (value, decimals) => withDecimalSign(fixed(value, decimals), language),
  };
}
