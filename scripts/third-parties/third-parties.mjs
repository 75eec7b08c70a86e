// Who else's work is in what we build, from the bundlers' own lists of what they took in: notices and the list of materials (SBOM).
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { INSIDE } from './inside-packages.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const TEXTS = new URL('./texts/', import.meta.url);

/** Licences that allow use and passing on in any product when their text goes along. */
const LOOKED_AT = new Set([
  '0BSD',
  'APAFML',
  'Apache-2.0',
  'Apache-2.0 WITH LLVM-exception',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'ISC',
  'MIT',
  'Zlib',
]);

/** The modules of which the bundler really put something into its outputs. */
export function modulesOf(output) {
  return [
    ...new Set(
      output.flatMap(({ modules = {} }) => Object.entries(modules).flatMap(([id, { renderedLength }]) => (renderedLength > 0 ? [id] : []))),
    ),
  ];
}

/**
 * The packages that these modules belong to and what stands inside them, by name: { name, version, licence, copyright, text, source, within }.
 * Throws for a package without a licence text, or with a licence that was not looked at.
 */
export function thirdParties(modules, { command = true } = {}) {
  const found = new Map();
  for (const path of modules) {
    const folder = packageOf(path.replace(/^\0/, '').split('?')[0] ?? '');
    if (folder === null || found.has(folder)) continue;
    found.set(folder, readPackage(folder));
  }
  const packages = [...found.values()];
  const names = new Set(packages.map(({ name }) => name));
  const inside = INSIDE.filter(({ within, onlyCommand }) => names.has(within) && (command || !onlyCommand)).map(({ texts, ...entry }) => ({
    ...entry,
    text: texts.map((name) => readFileSync(new URL(`${name}.txt`, TEXTS), 'utf8').trim()).join('\n\n'),
  }));
  const all = [...packages, ...inside].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
  const unknown = all.filter(({ licence }) => !LOOKED_AT.has(licence));
  if (unknown.length > 0) throw new Error(`licences to look at: ${unknown.map(({ name, licence }) => `${name} (${licence})`).join(', ')}`);
  return all;
}

/** The folder of the installed package that a module belongs to; null for our own. */
function packageOf(path) {
  const parts = path.split(/[\\/]/);
  const at = parts.lastIndexOf('node_modules');
  if (at < 0) return null;
  const length = parts[at + 1]?.startsWith('@') ? 3 : 2;
  const folder = parts.slice(0, at + length).join(sep);
  return folder.startsWith(sep) ? folder : join(root, folder);
}

function readPackage(folder) {
  const { name, version, license, licenses, repository, homepage } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((each) => /^(licen[cs]e|copying)/i.test(each));
  if (file === undefined) throw new Error(`${name} carries no licence text`);
  const whole = readFileSync(join(folder, file), 'utf8').replace(/\r\n?/g, '\n').trim();
  const notice = existsSync(join(folder, 'NOTICE')) ? `\n\n${readFileSync(join(folder, 'NOTICE'), 'utf8').trim()}` : '';
  const named = typeof license === 'string' ? license : (license?.type ?? licenses?.map(({ type }) => type).join(' OR '));
  const isMit = /Permission is hereby granted, free of charge, .* to deal in the Software without restriction/.test(
    whole.replace(/\s+/g, ' '),
  );
  const source = typeof repository === 'string' ? repository : (repository?.url ?? homepage ?? '');
  return {
    name,
    version,
    licence: named ?? (isMit ? 'MIT' : 'none named'),
    copyright: null,
    text: whole + notice,
    source: source.replace(/^git\+/, ''),
  };
}

/** A text as its words alone, whatever breaks its lines and quotes. */
const words = (text) => text.replace(/[“”]/g, '"').replace(/\s+/g, ' ').trim();
const MIT = words(readFileSync(new URL('mit.txt', TEXTS), 'utf8'));

/** A text of the MIT licence as what stands before it, mostly whose it is; null for any other, or where more follows. */
function beforeMit(text) {
  const flat = words(text);
  if (!flat.endsWith(MIT) && !flat.endsWith(MIT.replaceAll('"', "'"))) return null;
  const before = text.slice(0, text.search(/Permission\s+is\s+hereby\s+granted/)).trim();
  return before.replace(/^(#+\s*)?\(?(The )?MIT License( \(MIT\))?\)?\s*/i, '').trim();
}

/** The notices as one text: a list, then each licence text once with the names and copyright notices of those whose it is. */
export function noticesText(parties, title) {
  const list = parties.map(({ name, version, licence, within }) => `${name} ${version} (${licence})${within ? `, inside ${within}` : ''}`);
  const byText = new Map();
  for (const { name, copyright, text } of parties) {
    const notice = copyright ?? beforeMit(text);
    const licence = notice === null ? text : beforeMit(text) === null ? text : readFileSync(new URL('mit.txt', TEXTS), 'utf8').trim();
    byText.set(licence, [...(byText.get(licence) ?? []), notice === null ? name : `${name}: ${notice}`]);
  }
  const texts = [...byText].map(([text, names]) => `${'-'.repeat(78)}\n${names.join('\n')}\n\n${text}`);
  return `${title}\n\nIt contains work of others, under their licences:\n\n${list.join('\n')}\n\n${texts.join('\n\n')}\n`;
}

/** The list of materials in CycloneDX 1.5; the same parties and version give the same bytes. */
export function bomOf(parties, version) {
  const components = parties.map(({ name, version: own, licence, source, within }) => ({
    type: 'library',
    'bom-ref': `${name}@${own}`,
    name,
    version: own,
    licenses: [licence.includes(' ') ? { expression: licence } : { license: { id: licence } }],
    ...(within ? { description: `inside ${within}` } : { purl: `pkg:npm/${name.replace('@', '%40')}@${own}` }),
    ...(source.startsWith('http') ? { externalReferences: [{ type: 'vcs', url: source }] } : {}),
  }));
  const hex = createHash('sha256')
    .update(JSON.stringify([version, components]))
    .digest('hex');
  // A name-based UUID's form: version 8 of RFC 9562 leaves the digits to the one who makes it.
  const uuid = `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
  return {
    bomFormat: 'CycloneDX',
    specVersion: '1.5',
    serialNumber: `urn:uuid:${uuid}`,
    version: 1,
    metadata: {
      component: {
        type: 'application',
        'bom-ref': 'knucklewright',
        name: 'knucklewright',
        version,
        licenses: [{ license: { id: 'MIT' } }],
      },
    },
    components,
  };
}
