import { quote } from '../../units/quote.ts';
import { failure, type Problem, type Result, success } from '../../units/result.ts';
import { cautionsEnglish } from '../../words/cautions.ts';
import type { CutterProfile } from './cutter-profile.ts';

/** What the person says of the sheet that will be cut. */
export interface LaserMaterial {
  readonly name: string | null;
  /** The person has read in the sheet's safety data that a laser may cut it. */
  readonly allowsLaser: boolean;
}

/**
 * Names under which polyvinyl chloride goes, in plain letters: under a laser it gives off hydrogen chloride. Its CAS number is 9002-86-2.
 * Each is looked for inside the name, so `vinyl` covers polyvinylchlorid, polychlorure de vinyle, policloruro de vinilo (`vinil`) and
 * poli(chlorek winylu) (`winyl`). Finnish, Estonian, Greek, Cyrillic and East Asian spellings stand beside the abbreviations.
 */
const PVC_NAMES = [
  'pvc',
  'vinyl',
  'vinil',
  'vinyyli',
  'vinuul',
  'winyl',
  'пвх',
  'винил',
  'вініл',
  'βινυλ',
  'пхв',
  'pcv',
  'pcw',
  'chloroeth',
  'chloreth',
  '9002862',
  '聚氯乙烯',
  'ポリ塩化ビニル',
  '塩ビ',
  '폴리염화비닐',
];
/** Vinyls that are no chloride are refused with them: a name says too little, and the knife cuts them as well. */
const folded = PVC_NAMES.map(fold);

/**
 * Whether a laser file may be written. Fails (exit 3) unless the material is named, the person says that its safety sheet allows a laser,
 * and its name is not one of PVC; every reason at once. The caution comes along as a warning each time. Other cutters ask nothing.
 */
export function laserAllowed(profile: CutterProfile, material: LaserMaterial): Result<null> {
  if (profile.laser !== true) return success(null);
  const problems: Problem[] = [];
  const refuse = (code: string, where: string, message: string) =>
    problems.push({ code, where, message: `${message} ${cautionsEnglish.laser}`, kind: 'refused' });
  const name = material.name?.trim() ?? '';
  if (name === '') refuse('LASER_MATERIAL_UNNAMED', '--material', 'A laser file needs the name of the sheet: --material "NAME".');
  else if (isPvc(name)) refuse('LASER_MATERIAL_PVC', '--material', `${quote(name)} is, or may be, PVC: no laser file is written for it.`);
  if (!material.allowsLaser) {
    const message = "A laser file needs your word that the sheet's safety data sheet allows it: --material-allows-laser.";
    refuse('LASER_NOT_ALLOWED', '--material-allows-laser', message);
  }
  if (problems.length > 0) return failure(...problems);
  const message = `laser file for ${quote(name)}. ${cautionsEnglish.laser} Ventilate, and stay beside the machine.`;
  return success(null, [{ code: 'LASER_CAUTION', message, next: "read the sheet's safety data sheet before the first cut" }]);
}

/** Whether a material's name is one of polyvinyl chloride, in whichever spelling, script, case or spacing. */
export function isPvc(name: string): boolean {
  const plain = fold(name);
  return folded.some((word) => plain.includes(word));
}

function fold(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}
