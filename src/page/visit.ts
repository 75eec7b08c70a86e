import { PLATE_GEOMETRY_VERSION } from '../pattern/plate/plate.ts';
import type { Case } from '../record/case.ts';
import { CASE_SCHEMA_ID, type CaseFile, type MadeFile, type VisitFile } from '../record/case-schema.ts';
import { readCase } from '../record/read-case.ts';
import { readVisit } from '../record/read-visit.ts';
import { withVisit } from '../record/write-case.ts';
import { readNumber, tidyNumberText } from '../units/decimal-text.ts';
import { rounded } from '../units/number.ts';
import { failure, type Problem, type Result } from '../units/result.ts';
import type { Drawn } from './derive.ts';
import { endProblems } from './motion-problems.ts';
import type { Entries } from './state.ts';
import { readAngle } from './typed-motion.ts';

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

/** The case with the visit that was typed, proved as a whole; all problems at once. */
export function addVisit(file: CaseFile, typed: Entries['visit'], made: Drawn | null): Result<Case> {
  const visit = visitOf(typed, made);
  if (!visit.ok) return visit;
  const grown = withVisit(file, visit.value);
  return grown.ok ? readCase(grown.value) : grown;
}

function visitOf(typed: Entries['visit'], made: Drawn | null): Result<VisitFile> {
  const hours = typed.wear.trim() === '' ? null : readNumber(tidyNumberText(typed.wear));
  const active = motionOf(typed.lacks, typed.bends);
  const anyPassive = typed.passiveLacks.trim() !== '' || typed.passiveBends.trim() !== '';
  const passive = anyPassive ? motionOf(typed.passiveLacks, typed.passiveBends) : null;
  const problems: Problem[] = [
    ...endProblems(typed.lacks, 'visit.lacks', 'lacks'),
    ...endProblems(typed.bends, 'visit.bends', 'bends'),
    ...endProblems(typed.passiveLacks, 'visit.passiveLacks', 'lacks'),
    ...endProblems(typed.passiveBends, 'visit.passiveBends', 'bends'),
  ];
  const missing = (where: string) => problems.push({ code: 'FIELD_MISSING', where, message: `${where}: is missing.`, kind: 'input' });
  for (const key of ['date', 'lacks', 'bends'] as const) if (typed[key].trim() === '') missing(`visit.${key}`);
  if (anyPassive && passive === null && problems.length === 0)
    missing(typed.passiveLacks.trim() === '' ? 'visit.passiveLacks' : 'visit.passiveBends');
  if (typed.wear.trim() !== '' && hours === null)
    problems.push({ code: 'FIELD_UNREADABLE', where: 'visit.wear', message: 'visit.wear: not a number of hours.', kind: 'input' });
  if (active === null || problems.length > 0) return failure(...problems);
  const yes = (answer: string) => (answer === 'yes' ? true : answer === 'no' ? false : undefined);
  const seen = {
    fits: yes(typed.fits),
    redirects: yes(typed.redirects),
    marksOnSkin: yes(typed.marksOnSkin),
    comment: typed.comment.trim() === '' ? undefined : typed.comment.trim(),
  };
  const noted = Object.entries(seen).filter(([, value]) => value !== undefined);
  const read = readVisit({
    date: typed.date,
    goniometry: { pip: { active, ...(passive ? { passive } : {}) } },
    ...(made ? { made: madeDevice(made) } : {}),
    ...(noted.length > 0 ? { seen: Object.fromEntries(noted) } : {}),
    ...(hours === null ? {} : { wearHoursPerDay: hours }),
  });
  return read.ok ? { ok: true, value: read.value.file, warnings: read.warnings } : read;
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
