import type { Translations } from '../language.ts';
import type { patternEnglish } from './english.ts';

export const patternGerman: Translations<typeof patternEnglish> = {
  lettering: {
    digit: { index: 'D2', long: 'D3', ring: 'D4', little: 'D5' },
    aspect: { dorsal: 'DORSAL', palmar: 'PALMAR' },
    border: { radial: { first: 'RADIALER', second: 'RAND' }, ulnar: { first: 'ULNARER', second: 'RAND' } },
    web: 'INTERDIG.',
    seam: 'KLEBESTELLE',
    overlap: 'ÜBERLAPPUNG',
    trim: 'KÜRZEN',
    distal: 'DISTAL',
    hand: { left: 'LINKE HAND', right: 'RECHTE HAND' },
    handShort: { left: 'LINKS', right: 'RECHTS' },
    outside: 'AUSSEN',
    up: 'OBEN',
  },
  stopUnasked:
    'WARNZEICHEN WURDEN NICHT ERFRAGT, bevor dies gedruckt wurde: zuerst fragen (Wunde oder Drähte, Infektion, neue Taubheit, blasser, blauer oder kalter Finger, Verdacht auf CRPS, neuer Verlust aktiver Bewegung, instabiles Gelenk oder neue Fehlstellung, akute Entzündung).',
  distalUp: 'distale Kante oben',
  distalArrow: 'Pfeil zur distalen Kante',
  corner: 'Eckmarke: distale Kante, Anfangsende',
  mark: {
    midline: (digit, aspect, layer) => `Mitte ${digit}, ${aspect}, ${layer}`,
    web: (one, other, layer) => `Interdigitalfalte ${one}-${other}, ${layer}`,
    border: (border, finger) => `${border}, ${finger}`,
    seamStart: 'Klebestelle, Anfangsende',
    seamEnd: 'Klebestelle, Schlussende',
    overlapStart: 'Überlappung endet, Anfangsende',
    overlapEnd: 'Überlappung beginnt, Schlussende',
    trim: 'bis hier kürzen, wenn es passt',
    end: 'Ende des Streifens',
  },
  title: (code, side, block) => `${code}, Hand ${side}: ${block}`,
  part: (block, side) => `Streifen, ${block}, Hand ${side}`,
  square: 'Quadrat von 50 mm zum Prüfen des Maßstabs',
  measureFirst: 'zuerst nachmessen',
  invented: '(erfundenes Beispiel)',
  choice: {
    tacked: 'angedrückt',
    spanning: 'gespannt',
    lap: 'überlappt',
    opening: 'überlappt, zum Öffnen, mit Riemen',
    pinch: 'gekniffen',
    staggered: 'gestaffelt',
    straight: 'gerade',
  },
  fact: {
    differential: (degrees, closure) => `MP-Differenz ${degrees} Grad, ${closure}`,
    strip: (width, auto, outline, thickness) =>
      `Streifen ${width} breit${auto ? ' (auto)' : ''}, ${outline}, aus Niedrigtemperatur-Material, ${thickness} dick`,
    length: (length, below, above) => `Länge flach ${length} mm (95-%-Bereich -${below} bis +${above})`,
    seam: (seam, allowance, trim, stretch) =>
      `Klebestelle ${seam} ${allowance}${trim === '' ? '' : `, Zugabe ${trim}`}${stretch === '' ? '' : `, Dehnung ${stretch} %`}`,
    date: (date) => `Datum ${date}`,
    geometry: (version) => `Geometrie ${version}`,
    loop: (digits, length, ring) => `Schlaufe ${digits}: innen ${length} Umfang (Ringgröße ${ring})`,
    estimated: (list) => `GESCHÄTZT, nicht gemessen: ${list}`,
    curved: (degrees, fingers) =>
      `um ${degrees} Grad gebogen, weil sich ${fingers} verjüngen: an der Linie schneiden, nicht nach dem Lineal`,
    noRoom: (list) => `Auf dem Streifen kein Platz für: ${list}`,
  },
  marks: 'MARKEN, mm vom Anfangsende (Eckmarke)',
  legend: {
    cut: 'schneiden',
    dorsal: 'Fingermitte, Streifen läuft dorsal',
    palmar: 'Fingermitte, Streifen läuft palmar',
    border: 'Wende um einen Randfinger',
    web: 'Interdigitalfalte',
    limit: 'Ende der Überlappung; kürzen',
  },
  section: {
    heading: (side) => `Schnitt, Hand ${side}`,
    capitals: { left: 'SCHNITT, LINKE HAND', right: 'SCHNITT, RECHTE HAND' },
    caption: 'Von den Fingerspitzen gesehen, dorsal oben; die innere Lage liegt an den gehaltenen Fingern.',
    first: 'von den Fingerspitzen, dorsal oben;',
    second: 'innere Lage an den gehaltenen Fingern',
    digit: (finger, place) => `${finger}, ${place}`,
    strip: 'Streifen, seine beiden Seiten',
    seam: 'Klebestelle',
    seamOuter: 'Klebestelle, äußere Lage',
  },
  cutList: {
    strip: 'Streifen',
    from: 'mm vom Anfangsende (Eckmarke)',
    curved:
      'Der Streifen ist für Finger gebogen, die sich verjüngen: an der gezeichneten Linie schneiden. Die Zahlen sind die des ungebogenen Streifens; entlang gemessen stimmen sie dort, wo der Finger gemessen wurde.',
    edges: 'Kanten: mm von der Linie der vordersten Interdigitalfalte, distal +; zwischen den Zeilen gerade, Ecken rund.',
    relief: (finger, depth) =>
      `Palmar am ${finger}, von einer Seite zur anderen, ist die distale Kante um ${depth} zurückgeschnitten (in der Mitte), eben, mit runden Stufen.`,
  },
  wedge: (degrees) => `Keil von ${degrees} Grad`,
  degrees: (degrees) => `${degrees} Grad`,
  gauge: (degrees) => `MP-Differenz, ${degrees} Grad: ausschneiden, zwischen die Finger halten`,
  way: {
    pass: (aspect, digit) => `${aspect} an ${digit}`,
    turn: { radial: 'um die radiale Seite', ulnar: 'um die ulnare Seite' },
  },
  motion: { extension: 'Streckung', flexion: 'Beugung' },
  step: {
    measure: 'Messen. Beide 100-mm-Balken und der Kartenumriss auf diesem Blatt müssen stimmen; einige Maße mit der Hand vergleichen.',
    paper:
      'Papierprobe. Einen Papierstreifen (draw --paper-trial) um die Finger weben, die Teilung ablesen und diesen Streifen mit der Ablesung neu zeichnen, bevor Kunststoff erwärmt wird.',
    paperDone: (reading) => `Papierprobe: gemacht, abgelesen ${reading} mm; dieser Streifen ist dafür gezeichnet.`,
    cut: (thickness) =>
      `Schneiden. Außenseite oben, distale Kante oben (an gehaltenen Fingern liegt die Außenseite auf der Haut): den Umriss aus Material von ${thickness} Dicke schneiden und die Marken übertragen, auch die Seite der Hand.`,
    heat: 'Im Wasserbad von 65 bis 71 °C erwärmen, weniger als eine Minute; die Anleitung des Materials geht vor.',
    blot: 'Abtupfen, warten und auf der eigenen Haut prüfen, bevor es auf die Hand kommt.',
    drape: (held, degrees, motion, way) =>
      `Anformen, ${held} am MP-Gelenk etwa ${degrees} Grad mehr in ${motion} gehalten als die Nachbarn. Von der Eckmarke läuft der Streifen: ${way}, und zurück zur Klebestelle. Nicht mehr dehnen als geplant.`,
    lap: (allowance) => `die Enden um ${allowance} übereinanderlegen, Marke auf Marke`,
    opening: (allowance) =>
      `die Enden um ${allowance} übereinanderlegen, Marke auf Marke, mit Folie oder Papier dazwischen, damit sie nicht kleben; kalt einen Riemen anbringen, der sie schließt`,
    pinch: (allowance) => `die Laschen von ${allowance} an den Marken zusammenkneifen`,
    seam: (close, shift, tack) =>
      `Klebestelle: ${close}.${shift} Unbeschichtetes Material klebt trocken und heiß an sich selbst; bei beschichtetem zuerst die Schicht abkratzen oder abwischen.${tack}`,
    shift: (slope) =>
      ` Für jeden mm, den es länger oder kürzer schließt als gezeichnet, versetzen sich die Kanten der Enden um ${slope} mm entlang der Hand; gleich schneiden.`,
    tack: (held) => ` Die äußere Lage in der Mitte (${held}) auf die innere drücken und dort verbinden.`,
    spanning: ' Die äußere Lage bleibt über den gehaltenen Fingern gespannt.',
    cool: 'Auf der Hand abkühlen lassen, bis es hart ist, die Finger weiter gehalten.',
    check: 'Volle PIP-Beugung und volle PIP-Streckung jedes Fingers prüfen, dann abnehmen und wieder anlegen.',
    trim: 'Die Zugabe abschneiden und alle Kanten und Ecken runden; nichts Eckiges oder Scharfes liegt auf der Haut.',
  },
  check: {
    bars: 'Balken gemessen: quer ........ mm, längs ........ mm; 99,5 bis 100,5 ist gut.',
    pencil:
      'Vor dem Anfertigen die Stiftprobe: einen Stift über und unter den Fingern durchflechten, wie der Streifen läuft. Aktive PIP-Bewegung ist besser: ja / nein.',
    mp: (held, motion, planned) => `MP-Gelenk ${held} gegen die Nachbarn: ........ Grad ${motion} (geplant ${planned}).`,
    flexion: (predicted, blanks) => `PIP-Beugung frei${predicted === '' ? '' : ` (erwartet bis ${predicted} Grad)`}: ${blanks}.`,
    extension: (blanks) => `PIP-Streckung frei: ${blanks}.`,
    active: (finger) => `Aktive PIP-Bewegung, ${finger}: ohne ........ mit ........ Grad.`,
    clear: 'Distale Kante frei von jeder palmaren PIP-Falte, proximale Kante frei von den Interdigitalfalten (2 bis 3 mm).',
    onAndOff: 'Geht ohne Kraft über die PIP-Gelenke an und ab.',
    edges: 'Kanten rund; nichts wackelt, nichts klemmt, keine weiße Haut.',
    skin: 'Haut nach etwa 20 Minuten Tragen angesehen: Rötung nach 15 bis 20 Minuten weg.',
  },
  trial: {
    title: (code, side, block) => `${code}, Hand ${side}: Papierstreifen, ${block}`,
    part: (block, side) => `Papierstreifen, ${block}, Hand ${side}`,
    tick: (mm) => `${mm} mm auf der Teilung`,
    heading: 'PAPIERSTREIFEN',
    settings: (width, degrees, closure, date) => `Breite ${width}, MP-Differenz ${degrees} Grad, ${closure}, Datum ${date}`,
    length: (length) => `vom Ende bis null ${length} mm`,
    first: '1. Das 50-mm-Quadrat nachmessen, dann den Streifen aus einfachem Papier (80 g) schneiden.',
    bars: '1. Die beiden Balken nachmessen, dann den Streifen aus dieser Seite schneiden (Papier 80 g).',
    second:
      '2. Außenseite oben: um die Finger weben, wie der Streifen laufen wird, anliegend, nicht fest, die Finger in der MP-Differenz gehalten.',
    third: '3. Auf der Teilung ablesen, wo das Anfangsende liegt. + ist länger als gezeichnet.',
    fourth: '4. Den Streifen mit dieser Ablesung neu zeichnen: --paper-reading, oder das Feld auf der Seite.',
    reading: 'Ablesung: ............ mm',
  },
};
