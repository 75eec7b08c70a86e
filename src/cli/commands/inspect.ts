import { readBytes } from '../../files/read-file.ts';
import { LIMITS } from '../../inspect/drawing.ts';
import { inspectFile } from '../../inspect/inspect-file.ts';
import { success } from '../../units/result.ts';
import { defineCommand } from '../define-command.ts';
import { describeInspection } from '../describe-inspection.ts';
import { EXIT } from '../exit.ts';
import { argument } from '../flags/flag.ts';
import { jsonFlag } from '../flags/output-flags.ts';

/** `inspect`: exit 0 when nothing is found wrong, 3 with findings, 1 when the file cannot be read at all. */
export const inspect = defineCommand({
  name: 'inspect',
  group: 'Files and printers',
  about: 'read an SVG, DXF or PDF back: parts, sizes, layers, units, and what a cutter would trip over (exit 3 when there is something)',
  args: [argument('<file>', 'the file; what it is, is told by its content')],
  flags: [jsonFlag],
  read: async ([file]) => {
    const bytes = await readBytes(file, LIMITS.bytes);
    return bytes.ok ? success({ file, bytes: bytes.value }) : bytes;
  },
  make: ({ file, bytes }) => success({ file, found: inspectFile(bytes) }),
  report: { text: ({ file, found }) => describeInspection(found, file), json: ({ file, found }) => ({ file, ...found }) },
  exit: ({ found: { findings } }) => {
    if (findings.some(({ code }) => code === 101 || code === 102)) return EXIT.badInput;
    return findings.length > 0 ? EXIT.refused : EXIT.done;
  },
});
