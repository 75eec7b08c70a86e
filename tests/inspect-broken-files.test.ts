import { describe, expect, it } from 'vitest';
import { describeInspection } from '../src/cli/describe-inspection.ts';
import { inspectFile } from '../src/inspect/inspect-file.ts';
import { BROKEN_FILES, CONSEQUENCES, SOUND_DXF, SOUND_SVG } from './broken-files.ts';

const codesIn = (content: string | Uint8Array) => inspectFile(Buffer.from(content)).findings.map((finding) => finding.code);

describe('inspect', () => {
  it('finds nothing in the sound files that the broken ones are made from', () => {
    for (const sound of [SOUND_SVG, SOUND_DXF]) {
      const found = inspectFile(Buffer.from(sound));
      expect(found.findings).toEqual([]);
      expect([found.parts.length, found.parts[0]?.holes, found.parts[0]?.width, found.parts[0]?.height]).toEqual([1, 1, 80, 20]);
    }
  });

  it('says a name whole, however long, and shows what is hidden in it', () => {
    const name = `${'a-long-name-'.repeat(8)}\u202e_mm.svg`;
    const [heading] = describeInspection(inspectFile(Buffer.from(SOUND_SVG)), name).split('\n');
    expect(heading).toBe(`${'a-long-name-'.repeat(8)}\\u{202e}_mm.svg: SVG 1.1, read back`);
  });

  it('knows forty faults', () => expect(BROKEN_FILES).toHaveLength(40));

  it.each(BROKEN_FILES.map((file) => [file.name, file] as const))('finds this and nothing else: %s', (name, { content, code }) => {
    expect([...new Set(codesIn(content))]).toEqual([code, ...(CONSEQUENCES[name] ?? [])].sort((a, b) => a - b));
  });
});
