import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

/**
 * A second word for one thing, or one that a practitioner does not use for it, each with the word that stands. Common practice, no source.
 * Of the plastic `Platte` is right and of a tendon `Naht`; an orthosis and a seam of plastic have other words, which a list cannot tell apart.
 */
const STANDS_INSTEAD: Readonly<Record<string, string>> = {
  // German
  Schwimmhaut: 'Interdigitalfalte',
  Schwimmhäute: 'Interdigitalfalten',
  Handfläche: 'Hohlhand',
  Besuch: 'Termin',
  Hyperextension: 'Überstreckung',
  Messschieber: 'Schieblehre',
  Alarmzeichen: 'Warnzeichen',
  Deformität: 'Fehlstellung',
  Riemen: 'Band',
  Differenz: 'MP-Differenz',
  // Spanish
  placa: 'férula',
  circunferencia: 'perímetro',
  hinchazón: 'edema',
  visita: 'sesión',
  correa: 'cincha',
  bloque: 'configuración',
  'tope duro': 'sensación final dura',
  'el terapeuta': 'el/la terapeuta',
  'línea de órdenes': 'línea de comandos',
  'membrana interdigital': 'comisura',
  diferencial: 'diferencia MCF',
  Diferencial: 'Diferencia MCF',
};

const SRC = fileURLToPath(new URL('..', import.meta.url));
const texts = (folder: string, named: RegExp) =>
  readdirSync(join(SRC, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => named.test(name))
    .map((name) => ({ name, text: readFileSync(join(SRC, folder, name), 'utf8') }));

/** Whole words only, and no part of a compound with a hyphen; letters with accents are letters. */
const wordsIn = (text: string) =>
  Object.keys(STANDS_INSTEAD).filter((word) => new RegExp(`(?<![\\p{L}-])${word}(?!\\p{L})`, 'u').test(text));

it('one thing has one term, in the words of screen and paper', () => {
  // A subject with few words has all languages in one file; none of the words is English.
  const all = [...texts('words', /(?<!\.test)\.ts$/), ...texts('page', /(?:(?:german|spanish)[a-z-]*|-words)\.ts$/)];
  expect(all.length).toBeGreaterThan(40);
  for (const { name, text } of all) expect([name, wordsIn(text)]).toEqual([name, []]);
});

it('a second word would be found', () =>
  expect(wordsIn('an der Schwimmhaut; la circunferencia')).toEqual(['Schwimmhaut', 'circunferencia']));
