import type { Translations } from '../language.ts';
import type { terminalEnglish } from './english.ts';

export const terminalGerman: Translations<typeof terminalEnglish> = {
  next: 'danach',
  file: {
    words: 'die Worte dazu',
    drawing: (width, height) => `Zeichnung ${width} x ${height} mm`,
    chart: (width, height) => `Verlaufskurve ${width} x ${height} mm`,
    pages: (pages, paper) => `${pages === '1' ? '1 Seite' : `${pages} Seiten`}, ${paper}`,
    portrait: 'Hochformat',
    landscape: 'Querformat',
    tiled: 'Schnittmuster in Kacheln',
    strip: (length, width) => `Streifen ${length} x ${width} mm`,
    paperStrip: 'Papierstreifen',
    trueSize: '1:1',
  },
  why: {
    itself: (finger, lacks, wanted, place) =>
      `${finger}: dem PIP-Gelenk fehlt ${lacks}, darum wird das MP-Gelenk in relativer ${wanted} gehalten, also ist der ${finger} selbst ${place}`,
    byOthers: (finger, lacks, wanted, count, fingers, two, place) =>
      `${finger}: dem PIP-Gelenk fehlt ${lacks}, darum wird das MP-Gelenk in relativer ${wanted} gehalten, also ${two ? `sind im Streifen um ${count} die beiden mittleren Finger` : `ist im Streifen um ${count} der ${fingers}`} ${place} und der ${finger} wird im Vergleich dazu andersherum gehalten`,
    named: 'mit --block verlangt',
    read: (file) => `gelesen aus ${file}`,
    redrawn: (file) => `neu gezeichnet aus ${file}`,
  },
  label: {
    strip: 'Streifen',
    relief: 'Rückschnitt',
    freePip: 'PIP frei',
    loop: 'Schlaufe',
    estimated: 'GESCHÄTZT',
    angle: 'Winkel',
    palm: 'Hohlhand',
    wrist: 'Handgelenk',
    strap: (id) => `Band ${id}`,
  },
  strip: (length, low, high, read, width, closure) =>
    `${length} mm lang (95-%-Bereich ${low} bis ${high} mm${read ? ', der Papierablesung' : ''}), ${width} mm breit, ${closure}`,
  relief: (depth, finger) => `distale Kante palmar am ${finger} um ${depth} mm zurückgeschnitten`,
  freePip: (list) => `${list} Grad Beugung erwartet`,
  loop: (digits, round, ring) => `${digits}: innen ${round} mm Umfang, Ringgröße ${ring}`,
  plate: {
    angle: (degrees, low, high) =>
      `MP ${degrees} Grad (${low} bis ${high} möglich; ein Ausgangspunkt, übliche Praxis, ohne Quelle: die Behandelnden entscheiden)`,
    palm: (broad, round, thick) => `${broad} breit, ${round} Umfang, ${thick} mm dick`,
    face: (width, length, form, bend, corner) => `flach ${width} x ${length} mm, Knick ${form}, ${bend} mm lang, engste Ecke ${corner} mm`,
    fold: (least, worst, finger, miss, swing, stretch, shear) =>
      `an ihren Marken auf der Modellhand gebogen: ${least} bis ${worst} mm von der Haut, am meisten am ${finger}; MP-Gelenke höchstens ${miss} mm neben dem Knick, Finger ${swing} Grad zur Seite gedrückt, Platte ${stretch} % gedehnt, ${shear} Grad geschert`,
    bend: (asked, costs) => `Knick ${asked}: ${costs}`,
    form: { auto: 'dem Programm überlassen', straight: 'gerade', split: 'geteilt', kinked: 'geknickt' },
    cost: {
      stretch: (percent) => `dehnt ${percent} %`,
      shear: (degrees) => `schert ${degrees} Grad`,
      miss: (mm) => `verfehlt um ${mm} mm`,
      swing: (degrees) => `drückt ${degrees} Grad zur Seite`,
      none: 'kostet nichts',
      notToBeHad: 'nicht möglich',
    },
    free: (pip, thumb) =>
      `frei: ${pip} mm bis zu den PIP-Gelenken, ${thumb === '' ? 'kein Flügel am Daumen' : `${thumb} mm bis zur Daumenfalte`}`,
    shortened: (digit, mm) => `${digit}: ${mm} mm kürzer, als sein PIP-Gelenk erlaubt, damit die Stufe zum Nachbarn rund wird`,
    wrist: (mm) => `${mm} mm frei bis zur Handgelenkfalte`,
    strap: (width, length, where) => `${width} breit, ${length} lang, ${where}`,
  },
  shelf: {
    none: (length, width) => `kein Streifen im Vorrat reicht für ${length} x ${width} mm: neu zuschneiden`,
    take: (id, length, width, cutOff) => `aus dem Vorrat: ${id}, ${length} x ${width} mm: am Schlussende ${cutOff} mm abschneiden`,
  },
  sheets: {
    pieces: (pieces, verdict) => `${pieces} ${pieces === '1' ? 'Teil' : 'Teile'}: ${verdict}`,
    enough: 'keine neue Platte: die Reste genügen',
    count: (sheets) => (sheets === '1' ? '1 neue Platte' : `${sheets} neue Platten`),
    proved: (count, gap, margin) => `${count}, und weniger geht nicht bei ${gap} mm Abstand und ${margin} mm Rand`,
    bound: (count, atLeast, gap, margin) => `${count}, mindestens ${atLeast} bei ${gap} mm Abstand und ${margin} mm Rand`,
    inAll: (cuts) => `${cuts === '1' ? '1 gerader Schnitt' : `${cuts} gerade Schnitte`} mit der Schere insgesamt`,
    narrower: (gap, sheets, shears) =>
      `bei ${gap} mm Abstand ${sheets === '1' ? 'genügte 1 neue Platte' : `genügten ${sheets} neue Platten`}${shears ? ' (so schneidet --shears)' : ''}`,
    sheet: (number, remnant, parts, used, cuts) =>
      `Platte ${number}   ${remnant === '' ? 'neu' : `Rest ${remnant}`}, ${parts === '1' ? '1 Teil' : `${parts} Teile`}, ${used} % genutzt, ${cuts}`,
    cuts: (cuts) => `${cuts === '1' ? '1 Schnitt' : `${cuts} Schnitte`} mit der Schere`,
    nested: (cuts) =>
      `Handschienen verschachtelt: an den Umrissen schneiden, ${cuts === '1' ? '1 Schnitt' : `${cuts} Schnitte`} mit der Schere für die Reste`,
    noRemnants: 'keine Reste, die sich aufheben lassen',
    remnants: (list, more) => `Reste   ${list}${more === '' ? '' : `, und ${more} weitere`}`,
  },
  sizes: {
    from: (from, invented) => `Aus: ${from}${invented ? ' (erfunden)' : ''}`,
    column: { sizes: 'Größen', served: 'versorgt %', cutOff: 'Verschnitt mm', cutOffShare: 'Verschnitt %', lengths: 'Längen mm' },
    chosen: (count) => `${count === '1' ? '1 Größe' : `${count} Größen`}, und wie viele davon zu schneiden sind:`,
    serves: (served, all, which) => `(versorgt ${served} von ${all}, ${which})`,
    singly: (count) => `${count} längere werden einzeln geschnitten`,
    pinned: (width) =>
      `Streifen sind ${width} mm breit, wo niemand etwas anderes sagt; draw und batch machen sie mit --width ${width} ebenso`,
    useTrim: (mm) => `eine Größe darf ${mm} mm kürzer sein als der gezeichnete Streifen: so viel seiner Zugabe entfällt`,
    best: (byLength, bySheets, sheets) =>
      `nach Länge am besten brauchen sie ${byLength} Platten, nach Platten am besten ${bySheets}; genommen sind die nach ${sheets ? 'Platten' : 'Länge'} besten`,
    leftOut: (out, all, percent, codes) => `${out} von ${all} Händen (${percent} %) haben keinen Streifen und sind nicht dabei (${codes})`,
    others: 'die Größen gelten nur für die anderen',
    bias: (groups) =>
      `um diese Hände hielte ein solcher Streifen nichts (${groups}): die Größen richten sich nach den anderen; mit kleinerem --differential fehlen weniger`,
    group: (sex, out, hands) => `${sex} ${out} von ${hands}`,
  },
  batch: {
    made: (hands, before, wrong) =>
      `${hands === '1' ? '1 Hand' : `${hands} Hände`} in der Schnittliste${before === '' ? '' : `, davon ${before} aus einem früheren Lauf`}; ${wrong === '1' ? '1 Zeile' : `${wrong} Zeilen`} falsch`,
    files: (files, folder) => `${files === '1' ? '1 Musterdatei' : `${files} Musterdateien`} geschrieben in ${folder}`,
  },
};
