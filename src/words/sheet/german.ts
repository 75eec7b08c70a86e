import type { Translations } from '../language.ts';
import type { sheetEnglish } from './english.ts';

export const sheetGerman: Translations<typeof sheetEnglish> = {
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
