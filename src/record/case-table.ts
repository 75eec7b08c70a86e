import { JOINT_NAMES, JOINTS } from '../hand/target-motion.ts';
import { daysBetween } from '../units/day.ts';
import { plain } from '../units/number.ts';
import { RECORD_WORDS } from '../words/record/record-words.ts';
import type { Case } from './case.ts';
import { notedRows } from './case-text.ts';
import { otherHandTotal, totalAtVisit } from './total-active-motion.ts';

/** Says who measured: a person, whom a table that leaves the clinic need not name. */
const LEFT_OUT = 'rater';

/**
 * Cases as rows of cells, the first the headings: a row for each visit, degrees and mm, a negative extension deficit goes beyond straight. Holds case codes, no
 * comments and no raters; days since the case's first visit, or the days themselves where `dates` asks for them.
 */
export function caseTable(records: readonly Case[], dates: boolean): readonly (readonly (string | number)[])[] {
  const noted = notedRows(RECORD_WORDS.en).filter(({ key }) => key !== LEFT_OUT);
  const motions = JOINTS.flatMap((joint) => (['active', 'passive'] as const).map((kind) => ({ joint, kind })));
  const heads = [
    ...['code', 'side', 'digit', 'invented', 'visit', dates ? 'date' : 'day'],
    ...motions.flatMap(({ joint, kind }) => ['extension deficit', 'flexion'].map((what) => `${JOINT_NAMES[joint]} ${kind} ${what}`)),
    'TAM',
    ...noted.map(({ heading }) => heading),
    ...['made', 'arrangement', 'differential', 'MP angle', 'flat length mm', 'closed', dates ? 'closed on' : 'closed on day'],
  ];
  const number = (value: number | null | undefined) => (value === null || value === undefined ? '' : plain(value, 1));
  const rows = records.flatMap((record) => {
    const { code, side, digit, invented, visits, closed } = record;
    const first = visits[0]?.date ?? '';
    const day = (date: string) => (dates ? date : daysBetween(first, date));
    const other = otherHandTotal(record);
    return visits.map((visit, k) => {
      const { made, goniometry } = visit;
      const isStrip = made?.kind === 'strip';
      return [
        ...[code, side, digit, invented ? 'yes' : '', k + 1, day(visit.date)],
        ...motions.flatMap(({ joint, kind }) => {
          const motion = goniometry[joint][kind];
          return [number(motion?.extensionDeficit), number(motion?.flexion)];
        }),
        number(totalAtVisit(visit, other)?.degrees),
        ...noted.map(({ value }) => value(visit.noted)),
        ...[made?.kind ?? '', isStrip ? made.block.id : made ? made.faces : '', isStrip ? number(made.differential) : ''],
        ...[made && !isStrip ? number(made.mpAngle) : '', number(made?.flatLength), closed?.reason ?? '', closed ? day(closed.date) : ''],
      ];
    });
  });
  return [heads, ...rows];
}
