import { CRPS_SIGNS } from '../hand/signs.ts';
import { PLATE_GEOMETRY_VERSION } from '../pattern/plate/plate.ts';
import type { Case } from '../record/case.ts';
import { CASE_SCHEMA_ID, type CaseFile, type MadeFile, type VisitFile } from '../record/case-schema.ts';
import { readCase } from '../record/read-case.ts';
import { readVisit } from '../record/read-visit.ts';
import { withAmendment, withVisit } from '../record/write-case.ts';
import { plain, readNumber, rounded, tidyNumberText } from '../units/number.ts';
import { failure, type Problem, type Result } from '../units/result.ts';
import type { Drawn } from './derive.ts';
import { EMPTY_VISIT, type Entries, type VisitEntry } from './state.ts';
import { endProblems, readAngle } from './typed-motion.ts';

/** mm; as in the report of `draw`. */
const LENGTH_DECIMALS = 3;

/** A new case for the hand that is drawn or measured; fails where the hand names no treated finger. */
export function newCase(hand: Drawn['hand']): Result<Case> {
  return readCase({
    schema: CASE_SCHEMA_ID,
    code: hand.code,
    side: hand.side,
    ...(hand.target ? { digit: hand.target.digit } : {}),
    ...(hand.invented ? { invented: true } : {}),
    hand: hand.source,
    visits: [],
  });
}

/** The case with the visit that was typed, or with one corrected by it, proved as a whole; all problems at once. */
export function addVisit(file: CaseFile, typed: Entries['visit'], made: Drawn | null): Result<Case> {
  const at = typed.correcting === '' ? -1 : Number(typed.correcting);
  const was = file.visits[at];
  const visit = visitOf(typed, made, was);
  if (!visit.ok) return visit;
  const grown = was ? withAmendment(file, at, visit.value, {}) : withVisit(file, visit.value);
  return grown.ok ? readCase(grown.value) : grown;
}

/** The case without a visit; the file keeps what stood. */
export function withdrawVisit(file: CaseFile, index: number): Result<Case> {
  const less = withAmendment(file, index, null, {});
  return less.ok ? readCase(less.value) : less;
}

/** @param was what a correction starts from: what the form does not ask for stays as it was */
function visitOf(typed: Entries['visit'], made: Drawn | null, was: VisitFile | undefined): Result<VisitFile> {
  const problems: Problem[] = [];
  const missing = (where: string) => problems.push({ code: 'FIELD_MISSING', where, message: `${where}: is missing.`, kind: 'input' });
  for (const key of ['date', 'lacks', 'bends'] as const) if (typed[key].trim() === '') missing(`visit.${key}`);
  const motion = (lacksKey: VisitEntry, bendsKey: VisitEntry) => {
    const [lacks, bends] = [typed[lacksKey], typed[bendsKey]];
    const found = [...endProblems(lacks, `visit.${lacksKey}`, 'lacks'), ...endProblems(bends, `visit.${bendsKey}`, 'bends')];
    problems.push(...found);
    if (lacks.trim() === '' && bends.trim() === '') return null;
    if (lacksKey !== 'lacks' && found.length === 0)
      for (const key of [lacksKey, bendsKey]) if (typed[key].trim() === '') missing(`visit.${key}`);
    return motionOf(lacks, bends);
  };
  const [active, passive, mp] = [motion('lacks', 'bends'), motion('passiveLacks', 'passiveBends'), motion('mpLacks', 'mpBends')];
  const number = (key: VisitEntry): number | undefined => {
    if (typed[key].trim() === '') return undefined;
    const value = readNumber(tidyNumberText(typed[key]));
    if (value === null)
      problems.push({ code: 'FIELD_UNREADABLE', where: `visit.${key}`, message: `visit.${key}: not a number.`, kind: 'input' });
    return value ?? undefined;
  };
  const yes = (answer: string) => (answer === 'yes' ? true : answer === 'no' ? false : undefined);
  const word = (text: string) => (text.trim() === '' ? undefined : text.trim());
  const noted = {
    pain: number('pain'),
    skin: word(typed.skin),
    sensation: word(typed.sensation),
    colour: word(typed.colour),
    infection: yes(typed.infection),
    deformity: yes(typed.deformity),
    crpsSigns: typed.crpsSigns === '' ? undefined : CRPS_SIGNS.filter((sign) => typed.crpsSigns.split(' ').includes(sign)),
    fits: yes(typed.fits),
    redirects: yes(typed.redirects),
    wear: number('wear'),
    wearAgreed: number('wearAgreed'),
    rater: word(typed.rater),
    repeated: yes(typed.repeated),
    weaning: yes(typed.weaning),
    comment: word(typed.comment),
  };
  if (active === null || problems.length > 0) return failure(...problems);
  const asked = Object.keys(noted);
  const kept = Object.fromEntries(Object.entries(was ?? {}).filter(([key]) => !asked.includes(key)));
  const read = readVisit({
    ...kept,
    date: typed.date.trim(),
    goniometry: {
      ...was?.goniometry,
      pip: { active, ...(passive ? { passive } : {}) },
      ...(mp ? { mp: { ...was?.goniometry.mp, passive: mp } } : {}),
    },
    ...(made ? { made: madeDevice(made) } : {}),
    ...Object.fromEntries(Object.entries(noted).filter(([, value]) => value !== undefined)),
  });
  return read.ok ? { ok: true, value: read.value.file, warnings: read.warnings } : read;
}

/**
 * The form filled with a recorded visit, so that it can be corrected.
 * @param beyond the reader's word for an angle beyond straight
 */
export function entriesOfVisit(visit: VisitFile, index: number, beyond = 'hyper'): Entries['visit'] {
  const answer = (value: boolean | undefined) => (value === undefined ? '' : value ? 'yes' : 'no');
  const text = (value: number | undefined) => (value === undefined ? '' : plain(value, 4));
  const ends = (motion: VisitFile['goniometry']['pip']['active'] | undefined) => ({
    lacks:
      motion === undefined
        ? ''
        : motion.hyperextension === undefined
          ? text(motion.extensionDeficit)
          : `${beyond} ${text(motion.hyperextension)}`,
    bends: text(motion?.flexion),
  });
  const { mp, pip } = visit.goniometry;
  const [active, passive, mpPassive] = [ends(pip.active), ends(pip.passive), ends(mp?.passive)];
  return {
    ...EMPTY_VISIT,
    date: visit.date,
    pain: text(visit.pain),
    skin: visit.skin ?? '',
    sensation: visit.sensation ?? '',
    colour: visit.colour ?? '',
    infection: answer(visit.infection),
    deformity: answer(visit.deformity),
    crpsSigns: visit.crpsSigns === undefined ? '' : visit.crpsSigns.length === 0 ? 'none' : visit.crpsSigns.join(' '),
    lacks: active.lacks,
    bends: active.bends,
    passiveLacks: passive.lacks,
    passiveBends: passive.bends,
    mpLacks: mpPassive.lacks,
    mpBends: mpPassive.bends,
    repeated: answer(visit.repeated),
    wear: text(visit.wear),
    wearAgreed: text(visit.wearAgreed),
    fits: answer(visit.fits),
    redirects: answer(visit.redirects),
    rater: visit.rater ?? '',
    weaning: answer(visit.weaning),
    comment: visit.comment ?? '',
    correcting: String(index),
  };
}

/** A new visit begins with today's date and the last motion; nothing that can harm is answered in advance. */
export function proposedVisit(file: CaseFile, today: string, beyond = 'hyper'): Entries['visit'] {
  const last = file.visits.at(-1);
  const isMadeKnown = file.visits.some((visit) => visit.made !== undefined);
  const from = last ? entriesOfVisit(last, 0, beyond) : EMPTY_VISIT;
  return { ...EMPTY_VISIT, date: today, lacks: from.lacks, bends: from.bends, made: isMadeKnown ? '' : 'yes' };
}

/** Two numbers as a motion of the file; null until both can be read. */
function motionOf(lacks: string, bends: string): VisitFile['goniometry']['pip']['active'] | null {
  const [extension, flexion] = [readAngle(lacks), readAngle(bends)];
  if (extension.kind !== 'degrees' || flexion.kind !== 'degrees') return null;
  return extension.degrees < 0
    ? { hyperextension: -extension.degrees, flexion: flexion.degrees }
    : { extensionDeficit: extension.degrees, flexion: flexion.degrees };
}

function madeDevice(drawn: Drawn): MadeFile {
  if (drawn.kind === 'plate') {
    const { design, options, report } = drawn;
    return {
      kind: 'plate',
      faces: design.faces,
      mpAngle: design.angle,
      options: { ...options },
      geometryVersion: PLATE_GEOMETRY_VERSION,
      flatLength: rounded(Math.max(...report.faces.map((face) => face.length)), LENGTH_DECIMALS),
    };
  }
  const { block, options, figures, report } = drawn;
  return {
    kind: 'strip',
    block: { id: block.id, places: block.places },
    options: { ...options },
    geometryVersion: figures.geometryVersion,
    flatLength: rounded(report.flatLength, LENGTH_DECIMALS),
  };
}
