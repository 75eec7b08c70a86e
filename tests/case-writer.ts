// A process of its own for the tests that kill what writes case files: opens a case or adds visits, and says of each, once it is kept, that it was.
// Usage: case-writer new FILE, or case-writer add FILE NAME COUNT
import { writeSync } from 'node:fs';
import { addVisit, createCase } from '../src/files/case-store.ts';
import { type Result, success } from '../src/units/result.ts';
import { sampleCase } from './sample-case.ts';

const [, , task = '', file = '', name = '', count = '0'] = process.argv;

writeSync(1, 'ready\n');
if (task === 'new') {
  done(await createCase(file, sampleCase([]).file));
  writeSync(1, 'made\n');
} else
  for (let k = 0; k < Number(count); k++) {
    const comment = `${name}-${k}`;
    const active = { extensionDeficit: 20, flexion: 90 };
    done(await addVisit(file, () => success({ date: '2026-03-02', goniometry: { pip: { active } }, comment })));
    writeSync(1, `added ${comment}\n`);
  }

function done(result: Result<unknown>): void {
  if (result.ok) return;
  writeSync(2, `${result.problems.map(({ code, message }) => `error ${code}: ${message}`).join('\n')}\n`);
  process.exit(1);
}
