/** How files are written, apart from what they show; one group for each format that has a choice. */
// biome-ignore lint/suspicious/noEmptyInterface: SVG and DXF have no choices yet
export interface OutputSettings {}

export const DEFAULT_OUTPUT_SETTINGS: OutputSettings = {};
