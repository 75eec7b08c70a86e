import type { Layer } from '../pattern/pattern.ts';
import { DEFAULT_SHEET_SETTINGS, type SheetSettings } from '../sheet/paper/sheet-settings.ts';
import { ARC_CHORD_ERROR } from '../units/tolerance.ts';

/** How the lines of one layer appear in a file. */
export interface LayerStyle {
  /** A to Z, 0 to 9, _ and -: what every DXF reader takes. */
  readonly name: string;
  /** `#rrggbb`, in SVG. */
  readonly colour: string;
  /** AutoCAD colour index, in DXF. */
  readonly dxfColour: number;
  /** Left out of the file. */
  readonly omit?: boolean;
}

export const DXF_FORMS = ['2007', 'r12'] as const;
export const DXF_ARCS = ['bulge', 'entities', 'lines'] as const;

export interface DxfSettings {
  /** `2007`: AC1021 with LWPOLYLINE. `r12`: AC1009 with POLYLINE, for old machines. */
  readonly form: (typeof DXF_FORMS)[number];
  /** Arcs as bulges of polylines, as separate LINE and ARC entities, or as short lines. */
  readonly arcs: (typeof DXF_ARCS)[number];
  /** How far short lines may lie from their arc, mm. */
  readonly chordError: number;
}

/** How files are written, apart from what they show. */
export interface OutputSettings {
  readonly layers: Readonly<Record<Layer, LayerStyle>>;
  /** Width of the lines, mm. */
  readonly stroke: number;
  /** Each part with its marks before the next, or all marks before the first cut. */
  readonly order: 'part-by-part' | 'layer-by-layer';
  readonly dxf: DxfSettings;
  readonly pdf: SheetSettings;
}

/**
 * Hairlines of 0.1 mm, which cutters take for a cut and printers still print. Black and two greys; in SVG the lightest keeps a contrast of
 * 4.5 to 1 on white (WCAG 2.2, 1.4.3). In DXF colour 7 is black on white and white on black; 251 and 8 are greys that keep 3 to 1 on both
 * (WCAG 2.2, 1.4.11), as drawing programs show either.
 */
export const DEFAULT_OUTPUT_SETTINGS: OutputSettings = {
  layers: {
    CUT: { name: 'CUT', colour: '#000000', dxfColour: 7 },
    MARK: { name: 'MARK', colour: '#404040', dxfColour: 251 },
    INFO: { name: 'INFO', colour: '#767676', dxfColour: 8 },
  },
  stroke: 0.1,
  order: 'part-by-part',
  dxf: { form: '2007', arcs: 'bulge', chordError: ARC_CHORD_ERROR },
  pdf: DEFAULT_SHEET_SETTINGS,
};
