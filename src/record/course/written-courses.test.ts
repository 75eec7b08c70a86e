import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type CourseNotes, type CourseVisit, sampleCourse } from '../../../tests/sample-course.ts';
import { ALL_WELL } from '../../hand/signs.ts';
import { nextSteps } from './next-steps.ts';

/** A visit of a course as a therapist writes it down, with the advice that is expected after it and why. */
interface WrittenVisit {
  readonly day: number;
  readonly pip: string;
  readonly allWell?: true;
  readonly allWellBut?: CourseNotes;
  readonly leads: string;
  readonly also?: readonly string[];
  readonly because: string;
}

interface WrittenCourse {
  readonly title: string;
  readonly why: string;
  readonly visits: readonly WrittenVisit[];
}

const FOLDER = new URL('../../../fixtures/courses/', import.meta.url);
const COURSES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => [name, JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')) as WrittenCourse] as const);

function visitOf({ day, pip, allWell, allWellBut, leads: _leads, also: _also, because: _because, ...noted }: WrittenVisit): CourseVisit {
  return [day, pip, { ...(allWell || allWellBut ? ALL_WELL : {}), ...allWellBut, ...noted }];
}

describe('written courses (invented)', () => {
  it('are at least twelve, and between them most rules lead', () => {
    expect(COURSES.length).toBeGreaterThanOrEqual(12);
    const leads = new Set(COURSES.flatMap(([, { visits }]) => visits.map((visit) => visit.leads)));
    expect(leads.size).toBeGreaterThanOrEqual(13);
  });

  it.each(COURSES)('%s', (_, { title, visits }) => {
    for (const [k, { day, leads, also = [], because }] of visits.entries()) {
      const found = nextSteps(sampleCourse(visits.slice(0, k + 1).map(visitOf))).steps.map(({ rule }) => rule);
      expect(found, `${title}, day ${day}: ${because}`).toEqual([leads, ...also]);
    }
  });
});
