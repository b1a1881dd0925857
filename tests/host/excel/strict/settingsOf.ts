import type { Batch } from './batch';
import { guarded } from './guarded';

/** Settings of the workbook; a test sets them, and takes them away. */
export const excelSettings = new Map<string, unknown>();

export function settingsOf({ pending, writes }: Batch): object {
  return {
    add: (key: string, value: unknown) => void writes.push(() => excelSettings.set(key, value)),
    getItemOrNullObject: (key: string) =>
      guarded(pending, () => (excelSettings.has(key) ? { key, value: excelSettings.get(key) } : undefined), {
        delete: () => void writes.push(() => excelSettings.delete(key)),
      }),
  };
}
