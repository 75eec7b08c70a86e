import { describe, expect, it } from 'vitest';
import demo from '../../../fixtures/demo-hand.json' with { type: 'json' };
import { type CourseNotes, type CourseVisit, sampleCourse } from '../../../tests/sample-course.ts';
import { readHand } from '../../hand/read-hand.ts';
import type { Case } from '../case.ts';
import { courseAdvice, planNext } from './course-advice.ts';

function caseOf(visits: readonly CourseVisit[], target: object = demo.target): Case {
  const hand = readHand({ ...demo, target });
  if (!hand.ok) throw new Error(hand.problems.map((p) => p.message).join('\n'));
  return { ...sampleCourse(visits), digit: 'ring', hand: hand.value };
}
const short = (record: Case) =>
  planNext(record).map((step) => (step.kind === 'block' ? step.block.id : step.kind === 'differential' ? step.to : step.kind));

describe('planNext(record)', () => {
  it('is the ladder of the plan after what was made', () => {
    expect(
      short(
        caseOf([
          [0, '30/95', { made: 'strip for extension, 20' }],
          [7, '30/95'],
        ]),
      ),
    ).toEqual([25, 'ring-lowered-in-four']);
    const raised = caseOf([
      [0, '30/95', { made: 'strip for extension, 20' }],
      [7, '30/95', { made: 'strip for extension, 25' }],
      [14, '30/95'],
    ]);
    expect(short(raised)).toEqual(['ring-lowered-in-four']);
  });

  it('is empty without a hand, without a strip, and where the plan now serves another motion or is stopped', () => {
    const visits: readonly CourseVisit[] = [
      [0, '30/95', { made: 'strip for extension, 20' }],
      [7, '30/95'],
    ];
    expect(planNext({ ...caseOf(visits), hand: null })).toEqual([]);
    expect(
      short(
        caseOf([
          [0, '30/95', { made: 'plate at 60' }],
          [7, '30/95'],
        ]),
      ),
    ).toEqual([]);
    expect(
      short(
        caseOf([
          [0, '30/95', { made: 'strip for extension, 20' }],
          [7, '0/60'],
        ]),
      ),
    ).toEqual([]);
    expect(short(caseOf(visits, { ...demo.target, stopSigns: ['infection'] }))).toEqual([]);
  });

  it('is what the course says where the strip does not redirect, in every language', () => {
    const record = caseOf([
      [0, '30/95', { made: 'strip for extension, 20' }],
      [7, '30/95', { redirects: false, wear: 6 }],
    ]);
    for (const language of ['en', 'de', 'es'] as const) {
      const idle = courseAdvice(record, language).steps.find(({ rule }) => rule === 'IDLE');
      expect(idle?.message).toMatch(/25 .*ring-lowered-in-four/);
    }
  });
});

describe('a gain that stands under a graver word', () => {
  const gained: readonly CourseVisit[] = [
    [0, '40/95', { made: 'strip for extension, 20' }],
    [7, '33/95'],
    [14, '26/95'],
  ];
  it.each(['en', 'es', 'de'] as const)('is told as a fact and never as a word to keep on, in %s', (language) => {
    const alone = courseAdvice(caseOf([...gained, [21, '19/95']]), language).steps;
    expect(alone.map(({ rule }) => rule)).toEqual(['GAINING']);
    const keep = alone[0]?.title ?? '';
    const [asIs = ''] = /\. (Keep it as it is|So lassen|Dejarla como está)\./.exec(alone[0]?.message ?? '') ?? [];
    expect(asIs).not.toBe('');
    const broken = courseAdvice(caseOf([...gained, [21, '19/95', { skin: 'broken' }]]), language).steps;
    expect(broken.map(({ rule }) => rule)).toEqual(['PAUSE', 'GAINING']);
    for (const { title, message } of broken) {
      expect(title).not.toBe(keep);
      expect(message).not.toContain(asIs.slice(2));
    }
  });
});

describe('what would have the device worn on or changed', () => {
  const goal: readonly CourseVisit[] = [
    [0, '30/95', { made: 'strip for extension, 20' }],
    [28, '4/97'],
  ];
  it.each(['en', 'es', 'de'] as const)('waits under a pause or a stop, in %s', (language) => {
    const of = (notes: CourseNotes) => courseAdvice(caseOf([...goal, [35, '4/97', notes]]), language).steps;
    const goalOf = (notes: CourseNotes) => of(notes).find(({ rule }) => rule === 'GOAL');
    expect(goalOf({})).toMatchObject({ action: 'wean', when: null });
    for (const [notes, leads] of [
      [{ skin: 'broken' }, 'PAUSE'],
      [{ sensation: 'stays' }, 'STOP_NOW'],
    ] as const) {
      const [first] = of(notes);
      expect(first?.rule).toBe(leads);
      expect(goalOf(notes)?.when).toMatch(/^(only once|solo cuando|erst wenn) /);
      expect(first?.when).not.toBe(goalOf(notes)?.when);
    }
    // A pause beside a stop says why, and not when to begin again.
    const pause = (notes: CourseNotes) => of(notes).find(({ rule }) => rule === 'PAUSE')?.message ?? '';
    const again = /half the hours|mitad de las horas|halben Tragezeit/;
    expect(pause({ skin: 'broken' })).toMatch(again);
    expect(pause({ skin: 'broken', sensation: 'stays' })).toMatch(/skin is broken|piel está abierta|Haut ist verletzt/);
    expect(pause({ skin: 'broken', sensation: 'stays' })).not.toMatch(again);
  });
});

describe('a gain that is sure and under a degree a week', () => {
  // Monthly, half a degree a week: the standard error over so long is so small that both rules apply.
  const monthly: readonly CourseVisit[] = [
    [0, '40/95', { made: 'strip for extension, 20' }],
    ...[1, 2, 3, 4, 5].map((k): CourseVisit => [28 * k, `${40 - 2 * k}/95`, { wear: 6 }]),
  ];
  it.each(['en', 'es', 'de'] as const)(
    'is slow and no standstill, and nothing is changed before the patient was asked, in %s',
    (language) => {
      const { steps } = courseAdvice(caseOf(monthly), language);
      expect(steps.map(({ rule }) => rule)).toEqual(['GAINING', 'PLATEAU']);
      const [, slow] = steps;
      expect(slow?.title).toMatch(/^(Slow|Lento|Langsam)$/);
      expect(slow?.message).toMatch(/whether that is enough|si le basta|ob ihr das reicht/);
      expect(slow?.message).not.toMatch(/come to a stand|estancado| steht/);
    },
  );
});
