import { DEFAULT_SHEET_SETTINGS, type SheetSettings } from '../sheet/sheet-settings.ts';

/** How files are written, apart from what they show; one group for each format that has a choice. */
export interface OutputSettings {
  readonly pdf: SheetSettings;
}

export const DEFAULT_OUTPUT_SETTINGS: OutputSettings = { pdf: DEFAULT_SHEET_SETTINGS };
