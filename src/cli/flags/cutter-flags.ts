import { type Command, Option } from 'commander';
import { CUTTER_IDS, DEFAULT_BRIDGE_WIDTH } from '../../sheet/cutter/cutter-ids.ts';
import { ARC_CHORD_ERROR } from '../../units/tolerance.ts';
import { DXF_ARCS, DXF_FORMS } from '../../writers/output-settings.ts';

/** The flags about machines, as commander gives them. */
export interface CutterFlags {
  readonly cutter?: string;
  readonly kerf?: string;
  readonly leadIn?: string;
  readonly bridges?: string;
  readonly bridgeWidth?: string;
  readonly shareEdges?: boolean;
  readonly material?: string;
  readonly materialAllowsLaser?: boolean;
  readonly dxf?: string;
  readonly dxfArcs?: string;
  readonly dxfChordError?: string;
}

export function addCutterFlags(command: Command): void {
  const ids = CUTTER_IDS;
  command
    .option('--cutter <id>', `cutter profile: ${ids.join(', ')}, or a profile file (knucklewright schema cutter)`)
    .option(
      '--kerf <length>',
      'width that the tool takes away; outlines grow and holes shrink by half of it (default: the profile, else 0)',
    )
    .option('--lead-in <length>', 'radius of the quarter arc on which the tool enters each cut, in the waste (default: none)')
    .option('--bridges <count>', 'uncut bridges that hold each part in the sheet, 0 to 12 (default: 0)')
    .option('--bridge-width <length>', `width of a bridge in the plastic, 0.2 to 5 (default: ${DEFAULT_BRIDGE_WIDTH})`)
    .option('--share-edges', 'cut an edge that two parts have in common once; without it such a sheet is refused')
    .option('--material <name>', 'name of the sheet; a laser file needs it')
    .option('--material-allows-laser', "you have read in the sheet's safety data sheet that a laser may cut it")
    .addOption(new Option('--dxf <form>', 'form of DXF: 2007, or r12 for old machines').choices([...DXF_FORMS]).default('2007'))
    .addOption(
      new Option('--dxf-arcs <form>', 'arcs in DXF: bulge (in polylines), entities (LINE and ARC apart), lines (short lines)')
        .choices([...DXF_ARCS])
        .default('bulge'),
    )
    .option('--dxf-chord-error <length>', `with --dxf-arcs lines: distance allowed between line and arc (default: ${ARC_CHORD_ERROR})`);
}
