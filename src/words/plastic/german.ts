import type { Translations } from '../language.ts';
import type { plasticEnglish } from './english.ts';
import { lookAtGerman } from './look-at-german.ts';

export const plasticGerman: Translations<typeof plasticEnglish> = {
  lookAt: lookAtGerman,
  side: { left: 'LINKS', right: 'RECHTS' },
  invented: '(erfundenes Beispiel)',
  list: {
    title: (page, pages) => `SCHNITTLISTE, Seite ${page} von ${pages}`,
    head: {
      number: 'Nr.',
      code: 'KÜRZEL',
      side: 'HAND',
      size: 'GRÖSSE, mm',
      quantity: 'STÜCK',
      notes: 'STREIFEN oder HANDSCHIENE, Hinweise',
    },
    blank: 'Zuschnitt ohne Marken',
    look: (letters) => `ACHTEN AUF ${letters}`,
    legend: 'WORAUF ZU ACHTEN IST',
  },
  sheet: {
    title: (number, count, remnant, parts) =>
      `Platte ${number} von ${count}, ${remnant === '' ? 'neue Platte' : `Rest ${remnant}`}, ${parts === '1' ? '1 Teil' : `${parts} Teile`}`,
    size: (along, across, used) => `${along} mm in Walzrichtung x ${across} mm, ${used} % genutzt`,
    rules: (gap, margin, grain) => `Abstand ${gap}, Rand ${margin}, Lage zur Walzrichtung: ${grain}`,
    grainRule: { along: 'längs', across: 'quer', free: 'beliebig' },
    grain: 'WALZRICHTUNG',
    parts: 'TEILE, von links oben, Reihe für Reihe',
    noRoom: (list) => `Kein Platz für die Nummer auf: ${list}`,
    outlines: 'AN DEN UMRISSEN SCHNEIDEN',
    nested:
      'Diese Teile sind verschachtelt, manche um eine halbe Drehung gedreht (nie gewendet); kein gerader Schnitt läuft zwischen ihnen.',
    restsFirst: 'Zuerst die Reste mit der Schere, mm von der linken unteren Ecke:',
    thenOutlines: 'dann jedes Teil an seinem Umriss',
    order: 'SCHNITTFOLGE mit der Schere, mm von der linken unteren Ecke',
    orderOf: (cuts) =>
      `SCHNITTFOLGE mit der Schere, ${cuts === '1' ? '1 gerader Schnitt' : `${cuts} gerade Schnitte`}, mm von der linken unteren Ecke`,
    along: (at, from, to) => `in Walzrichtung, ${at} über dem unteren Rand, von ${from} bis ${to}`,
    across: (at, from, to) => `quer zur Walzrichtung, ${at} vom linken Rand, von ${from} bis ${to}`,
    remnants: 'RESTE zum Aufheben, längs x quer zur Walzrichtung',
    none: 'keine',
    several: (count, size) => `${count} von ${size}`,
  },
  sizes: {
    title: (page, pages) => `GRÖSSEN UND BEUTEL, Seite ${page} von ${pages}`,
    invented: '(erfunden)',
    head: { id: 'GRÖSSE', size: 'LÄNGE x BREITE, mm', quantity: 'STÜCK', serves: 'PASST', codes: 'FÜR' },
    serves: { all: 'alle', withoutLittle: 'Zeige- bis Ringfinger', withLittle: 'mit dem Kleinfinger' },
    singly: 'einzeln',
    bag: (size, count) => `${size} mm, ${count} Stück`,
    bagSingly: (size) => `einzeln, ${size} mm`,
    trim: (mm) => `seine Zugabe ist ${mm} mm kürzer als gezeichnet`,
    cutOff: (mm) => `${mm} mm am Schlussende abschneiden`,
    cutBack: (list) => `zurückschneiden, mm: ${list}`,
  },
  chart: {
    title: 'Vorratsgrößen: mittlerer Verschnitt nach der Zahl der Größen',
    heading: 'AB WANN MEHR GRÖSSEN NICHTS MEHR BRINGEN',
    across: 'ZAHL DER GRÖSSEN',
    up: 'MITTLERER VERSCHNITT, mm',
    ringed: (count) => `umringt: ${count === '1' ? 'die eine gewählte Größe' : `die ${count} gewählten Größen`}`,
    served: (from, percent) => `${from}, ${percent} % versorgt`,
  },
  from: {
    lengths: (count, file) => `${count} gemessene Längen aus ${file}`,
    norms: (count, group, seed, again, block) =>
      `${count} Hände aus Normwerten gezogen (${group}; Startzahl ${seed}, ${again} neu gezogen), ${block}`,
    table: (count, file, block) => `${count} Hände aus ${file}, ${block === '' ? 'Streifen nach dem Ziel jeder Hand' : block}`,
    group: { female: 'Frauen', male: 'Männer', mixed: 'Frauen und Männer' },
  },
};
