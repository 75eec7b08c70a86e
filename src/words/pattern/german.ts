import type { Translations } from '../language.ts';
import type { patternEnglish, plateEnglish } from './english.ts';

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
    opening: 'überlappt, zum Öffnen, mit Band',
    pinch: 'gekniffen',
    staggered: 'gestaffelt',
    straight: 'gerade',
  },
  fact: {
    differential: (degrees, closure) => `MP-Differenz ${degrees} Grad, ${closure}`,
    strip: (width, auto, outline, thickness) =>
      `Streifen ${width} breit${auto ? ' (automatisch)' : ''}, ${outline}, aus Niedrigtemperatur-Material, ${thickness} dick`,
    length: (length, below, above, read) =>
      `Länge flach ${length} mm (95-%-Bereich -${below} bis +${above}${read ? ', der Papierablesung' : ''})`,
    seam: (seam, allowance, trim, stretch) =>
      `Klebestelle ${seam} ${allowance}${trim === '' ? '' : `, Zugabe ${trim}`}${stretch === '' ? '' : `, Dehnung ${stretch} %`}`,
    date: (date) => `Datum ${date}`,
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
      'Papierprobe. Einen Papierstreifen („Papierprobe“ auf der Seite, oder draw --paper-trial) um die Finger weben, die Teilung ablesen und diesen Streifen mit der Ablesung neu zeichnen, bevor Kunststoff erwärmt wird.',
    paperDone: (reading) => `Papierprobe: gemacht, abgelesen ${reading} mm; dieser Streifen ist dafür gezeichnet.`,
    cut: (thickness) =>
      `Schneiden. Außenseite oben, distale Kante oben (an gehaltenen Fingern liegt die Außenseite auf der Haut): den Umriss aus Material von ${thickness} Dicke schneiden und die Marken übertragen, auch die Seite der Hand.`,
    heat: 'Im Wasserbad von 65 bis 71 °C erwärmen, weniger als eine Minute; die Anleitung des Materials geht vor.',
    blot: 'Abtupfen, warten und auf der eigenen Haut prüfen, bevor es auf die Hand kommt.',
    drape: (held, degrees, motion, way) =>
      `Anformen, ${held} am MP-Gelenk etwa ${degrees} Grad mehr in ${motion} gehalten als die Nachbarn. Von der Eckmarke läuft der Streifen: ${way}, und zurück zur Klebestelle. Nicht mehr dehnen als geplant.`,
    lap: (allowance) => `die Enden um ${allowance} übereinanderlegen, Marke auf Marke`,
    opening: (allowance) =>
      `die Enden um ${allowance} übereinanderlegen, Marke auf Marke, mit Folie oder Papier dazwischen, damit sie nicht kleben; kalt ein Band anbringen, das sie schließt`,
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
    fourth: '4. Den Streifen mit dieser Ablesung neu zeichnen, in ihrem Feld auf der Seite oder mit --paper-reading.',
    reading: 'Ablesung: ............ mm',
  },
};

export const plateGerman: Translations<typeof plateEnglish> = {
  title: {
    'plate-dorsal': 'MP-Handschiene dorsal',
    'plate-palmar': 'MP-Handschiene palmar',
    'plate-both': 'MP-Ruhigstellung, Handschiene dorsal und palmar',
    'mp-extension-block': 'MP-Streckung verhindert, palmare Handschiene über vier Finger (Hakenfaust)',
    'mp-immobilisation-dorsal': 'MP-Ruhigstellung, dorsale Handschiene, vier Finger',
    'mp-immobilisation-palmar': 'MP-Ruhigstellung, palmare Handschiene, vier Finger',
    'single-digit-with-neighbours': 'MP-Ruhigstellung eines Fingers mit seinen Nachbarn, dorsale Handschiene',
  },
  lettering: {
    face: { dorsal: 'DORSALE SCHIENE', palmar: 'PALMARE SCHIENE' },
    skin: 'HAUTSEITE UNTEN',
    bend: (degrees) => `MP-KNICK ${degrees}`,
    bendShort: (degrees) => `MP ${degrees}`,
    ulnar: 'ULNAR',
    thumb: 'DAUMEN',
    wrist: 'HANDGELENK: AUFBIEGEN',
  },
  name: (title, holds) => `${title}, ${holds}`,
  holds: (degrees, digits) => `MP ${degrees} Grad, ${digits}`,
  drawing: (code, side, name) => `${code}, Hand ${side}: ${name}`,
  part: (face, side) => `Handschiene ${face}, Hand ${side}`,
  left: (face, words) => `${face}: ${words}`,
  midlineOf: (digit) => `Mitte ${digit}`,
  line: {
    'mp-bend': 'MP-Knicklinie',
    'bend-limit': 'hier beginnt und endet der Knick',
    midline: 'Mitte eines Fingers',
    fold: 'Seitenlinie: hier knickt Flügel oder Seitenwand',
    flare: 'Kante von der Haut wegbiegen',
    strap: 'Haken für ein Band',
    trim: 'bis hier kürzen, wenn es passt',
  },
  hookAt: { radial: (strap) => `Haken für Band ${strap}, radial`, ulnar: (strap) => `Haken für Band ${strap}, ulnar` },
  sample: (words) => `Muster: ${words}`,
  fact: {
    holds: (holds) => `${holds}   (0 bis 90 möglich: die Behandelnden entscheiden)`,
    sheet: (thickness, off) => `Niedrigtemperatur-Material ${thickness} dick, ${off} von der Haut`,
    palm: (broad, round, thick) => `Hohlhand ${broad} breit, ${round} Umfang, also ${thick} dick`,
    face: (face, wide, bend, form, corner) =>
      `Handschiene ${face}: Handteil ${wide} breit, Knick ${bend} lang, ${form}, engste Ecke ${corner}`,
    bend: { straight: 'eine gerade Linie', split: 'geteilt zwischen D4 und D5', kinked: 'geknickt an jedem Gelenk' },
    wrist: (free) => `Handgelenk frei: ${free} bis zur Handgelenkfalte`,
    noRoom: (list) => `Auf der Handschiene kein Platz für: ${list}`,
    straps: 'BÄNDER schneiden (Klettband)',
    strap: (id, width, length, where) => `${id}   ${width} breit, ${length} lang, ${where}`,
  },
  lines: 'LINIEN',
  moulding: 'ANFORMEN',
  cautionsHeading: 'VORSICHT',
  gauge: {
    first: 'WINKELLEHRE: aus dem Papier schneiden,',
    second: 'Ring von der Seite auf das MP-Gelenk legen',
    title: (degrees) => `Winkellehre, ${degrees} Grad: ausschneiden, Ring von der Seite aufs MP-Gelenk`,
    mark: (degrees) => `Lehre für den MP-Winkel, ${degrees} Grad`,
    axis: 'MP-Achse und die Mitte beider Arme',
    arm: (degrees) => `MP ${degrees} Grad`,
    metacarpal: 'MITTELHAND',
    finger: 'FINGER',
  },
  strap: {
    title: (id) => `Band ${id}, Klettband`,
    goes: (where) => `Geht ${where}.`,
    hand: 'um die Hand, durch die Daumenfalte',
    fingers: (names) => `um die Grundglieder, ${names}`,
    range: (first, last) => `${first} bis ${last}`,
  },
  check: {
    mp: (planned) => `MP-Gelenke bei ........ Grad nach der Lehre (geplant ${planned}).`,
    free: 'Handgelenk frei in beide Richtungen, der Daumen erreicht die Finger, freie Finger machen die volle Faust.',
    clear: 'Proximale Kante frei von Handgelenkfalte und Ellenkopf; Daumenfalte frei; Kanten rund und aufgebogen.',
    straps: 'Bänder halten ohne Zug; nichts wackelt, nichts klemmt, keine weiße Haut.',
  },
  paperByBars:
    'Mit 100 % drucken, beide Balken nachmessen, das Papier ausschneiden und im Winkel auf die Hand legen, bevor Material geschnitten wird.',
  step: {
    paper:
      'Mit 100 % drucken, das 50-mm-Quadrat nachmessen, das Papier ausschneiden und im Winkel auf die Hand legen, bevor Material geschnitten wird.',
    pad: 'Zuerst polstern: Polster auf den Ellenkopf, wenn die Kante ihm nahe kommt, auf die Mittelhandköpfe und jede knochige oder empfindliche Stelle, und darüber anformen. Polster unter einer fertigen Handschiene macht sie eng.',
    heat: 'Auf dem Material anzeichnen, was das Schnittmuster anzeichnet, schneiden, erwärmen, wie das Material es verlangt (Wasser von 65 bis 71 °C, meist unter einer Minute), abtupfen.',
    hold: 'Zwei Paar Hände: eines hält die MP-Gelenke im Winkel, die Lehre an der Seite, Handgelenk gerade, das andere formt an. Die Schwerkraft hilft: dorsale Handschiene mit der Hohlhand unten, palmare mit der Hohlhand oben.',
    bend: 'Zuerst an der MP-Knicklinie biegen, dann den Handteil auflegen, dann Flügel und Seitenwände. Streichen, nicht drücken: Fingerabdrücke sind Druckstellen.',
    set: 'Die Lehre anhalten, bis es hart ist. Dann die Kante am Handgelenk, die Daumenfalte und jede Kante neben einem freien Gelenk aufbiegen.',
    check:
      'Prüfen: MP-Gelenke im Winkel, Handgelenk und Daumen frei, PIP-Gelenke in beide Richtungen ganz beweglich, freie Finger bis zur vollen Faust. Kürzen, was sie aufhält, runden, was gekürzt ist.',
    straps: 'Haken anbringen und die Bänder nach der Liste schneiden. Bänder halten, sie ziehen nicht.',
  },
  caution: {
    heat: 'Ein größeres Stück hält mehr Hitze und mehr Wasser als ein Streifen: länger abtupfen, auf der eigenen Haut prüfen, den Unterarm schützen.',
    pressure:
      'Die Haut über den Mittelhandköpfen, am Ellenkopf, am radialen Rand des Zeigefingers und in der Daumenfalte ansehen: Dort drücken Handschienen zuerst.',
    stiff:
      'Gerade gehaltene MP-Gelenke werden steif: nicht länger gerade halten, als der Plan sagt, und zum Üben abnehmen, wenn er es sagt.',
    angle:
      'Der MP-Winkel ist ein Anfang, den die Behandelnden beurteilen, übliche Praxis ohne veröffentlichte Quelle, nie eine Verordnung.',
  },
};
