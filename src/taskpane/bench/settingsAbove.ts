import type { CellValue } from '../../host/workbook';
import { headingOf } from '../sheets/sheetTable';
import type { EntryTable } from './entryTable';

const SETTINGS = {
  tolerance: /^tolerance(?:,? either way)?(?: ±)?$/,
  maxSpread: /^largest spread$/,
  step: /^(?:change per digit|step)$/,
  lowest: /^lowest(?: dial)?$/,
  highest: /^highest(?: dial)?$/,
  largestMove: /^largest move$/,
} as const;

export type SettingAbove = keyof typeof SETTINGS;

/** A setting that stands above a table: a label and, right of it, its number. */
export interface FoundSetting {
  readonly cell: CellValue;
  readonly unit: string;
  readonly label: string;
}

/** Settings of the whole table, written above its headings as label and number side by side. */
export function settingsAbove({ content, headingRow }: EntryTable): Partial<Record<SettingAbove, FoundSetting>> {
  const found: Partial<Record<SettingAbove, FoundSetting>> = {};
  for (const row of content.values.slice(0, headingRow)) {
    row.forEach((cell, column) => {
      const { words, unit } = headingOf(cell);
      const setting = (Object.keys(SETTINGS) as SettingAbove[]).find(name => words !== '' && SETTINGS[name].test(words));
      const value = row[column + 1];
      if (setting && value !== undefined && value !== '') found[setting] = { cell: value, unit, label: String(cell).trim() };
    });
  }
  return found;
}
