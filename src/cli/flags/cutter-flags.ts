import { CUTTER_IDS, DEFAULT_BRIDGE_WIDTH } from '../../sheet/cutter/cutter-ids.ts';
import { CONTENTS } from '../../sheet/cutter/machine-drawing.ts';
import { ARC_CHORD_ERROR } from '../../units/tolerance.ts';
import { DXF_ARCS, DXF_FORMS } from '../../writers/output-settings.ts';
import { bedFlag } from './bed-flag.ts';
import { type FlagsOf, flag, flagSet } from './flag.ts';

/** The flags about machines. */
export const cutterFlags = flagSet(
  flag(
    '--cutter <id>',
    `cutter profile: ${CUTTER_IDS.join(', ')}, or a profile file (knucklewright schema cutter); none: as if no machine was named`,
  ),
  flag(
    '--content <what>',
    'what SVG and DXF hold: cut, cut-and-marks, all (default: cut-and-marks with a cutter, else all); words go to the PDF or a text',
  ).choices(CONTENTS),
  bedFlag,
  flag('--test-square', 'with --content cut or cut-and-marks: the 50 mm square too, off the parts'),
  flag('--kerf <length>', 'width that the tool takes away; outlines grow and holes shrink by half of it (default: the profile, else 0)'),
  flag('--lead-in <length>', 'radius of the quarter arc on which the tool enters each cut, in the waste (default: none)'),
  flag('--bridges <count>', 'uncut bridges that hold each part in the sheet, 0 to 12 (default: 0)'),
  flag('--bridge-width <length>', `width of a bridge in the plastic, 0.2 to 5 (default: ${DEFAULT_BRIDGE_WIDTH})`),
  flag('--share-edges', 'cut an edge that two parts have in common once; without it such a sheet is refused'),
  flag('--material <name>', 'name of the sheet; a laser file needs it'),
  flag('--material-allows-laser', "you have read in the sheet's safety data sheet that a laser may cut it"),
  flag('--dxf <form>', 'form of DXF: 2007, or r12 for old machines').choices(DXF_FORMS).default('2007'),
  flag('--dxf-arcs <form>', 'arcs in DXF: bulge (in polylines), entities (LINE and ARC apart), lines (short lines)')
    .choices(DXF_ARCS)
    .default('bulge'),
  flag('--dxf-chord-error <length>', `with --dxf-arcs lines: distance allowed between line and arc (default: ${ARC_CHORD_ERROR})`),
);
export type CutterFlags = Partial<FlagsOf<[typeof cutterFlags]>>;
