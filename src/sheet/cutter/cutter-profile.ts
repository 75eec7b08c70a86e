import * as z from 'zod';
import knife from '../../../templates/cutters/knife.json' with { type: 'json' };
import laserIfAllowed from '../../../templates/cutters/laser-if-allowed.json' with { type: 'json' };
import penAndScissors from '../../../templates/cutters/pen-and-scissors.json' with { type: 'json' };
import { readSmallFile } from '../../units/form-problems.ts';
import type { Result } from '../../units/result.ts';
import { fileId, plainLine } from '../../units/text-form.ts';

const layer = z.strictObject({
  name: z
    .string()
    .regex(/^[A-Z0-9_-]{1,31}$/, 'A to Z, 0 to 9, _ and -, at most 31 (the strict names of DXF)')
    .describe('Name of the layer in the file'),
  colour: z
    .string()
    .regex(/^#[0-9a-fA-F]{6}$/, 'a colour as #rrggbb')
    .describe('Colour of its lines in SVG'),
  dxfColour: z.int().min(1).max(255).describe('AutoCAD colour index of the layer in DXF; 7 is black on white'),
  omit: z.boolean().optional().describe('Leave this layer out of the file'),
});

/** A cutter profile, `knucklewright/cutter@1`: how one machine wants its files. Lengths in mm. */
const CutterFile = z
  .strictObject({
    schema: z.literal('knucklewright/cutter@1'),
    id: fileId().describe('Name of the profile'),
    title: plainLine(120).min(1).describe('What the machine is, in words'),
    laser: z.boolean().optional().describe('A laser: the material must be named and allowed each time'),
    kerf: z.number().min(0).max(6).describe('Width that the tool takes away, mm; outlines grow and holes shrink by half of it'),
    stroke: z.number().min(0.01).max(1).describe('Width of the lines in SVG and PDF, mm'),
    order: z.enum(['part-by-part', 'layer-by-layer']).describe('Finish each part before the next, or draw all marks before the first cut'),
    leadIn: z.number().min(0).max(10).optional().describe('Radius of the quarter arc on which the tool enters each cut, mm'),
    bridges: z.int().min(0).max(12).optional().describe('Uncut bridges that hold each part in the sheet'),
    bridgeWidth: z.number().min(0.2).max(5).optional().describe('Width of a bridge in the plastic, mm'),
    layers: z.strictObject({ CUT: layer, MARK: layer, INFO: layer }),
  })
  .refine((file) => new Set(Object.values(file.layers).map((l) => l.name)).size === 3, {
    path: ['layers'],
    message: 'each layer needs a name of its own',
  })
  .refine((file) => file.layers.CUT.omit !== true, { path: ['layers', 'CUT', 'omit'], message: 'the cut layer cannot be left out' });

export type CutterProfile = z.infer<typeof CutterFile>;

/** JSON Schema of a cutter profile. */
export function cutterJsonSchema(): object {
  return z.toJSONSchema(CutterFile, { io: 'input' });
}

const FORM = {
  schema: 'knucklewright/cutter@1',
  code: 'CUTTER_FORM',
  whole: 'the profile',
  advice: 'See: knucklewright schema cutter.',
} as const;

/** A profile from parsed JSON; every fault of form at once (`CUTTER_FORM`, exit 1). `source` names the file in messages. */
export function readCutter(json: unknown, source: string): Result<CutterProfile> {
  return readSmallFile(CutterFile, json, source, FORM);
}

const FILES: readonly unknown[] = [knife, penAndScissors, laserIfAllowed];

let loaded: readonly CutterProfile[] | null = null;

/** The profiles in `templates/cutters`. Throws only if a shipped file is broken. */
export function cutters(): readonly CutterProfile[] {
  loaded ??= FILES.map((file) => {
    const profile = readCutter(file, 'templates/cutters');
    if (!profile.ok) throw new Error(profile.problems.map((p) => p.message).join('\n'));
    return profile.value;
  });
  return loaded;
}

/** The profile of that id, or undefined. */
export function cutterById(id: string): CutterProfile | undefined {
  return cutters().find((profile) => profile.id === id);
}
