import type { Translations } from '../language.ts';
import type { plateEnglish } from './plate-english.ts';

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
