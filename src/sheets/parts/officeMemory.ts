import * as v from 'valibot';
import type { Workbook } from '../../workbook/workbook';
import { recalled } from '../table/recalled';

/** What a workbook knows of the office's catalogue; it is remembered in its file. */
export interface OfficeMemory {
  /** Somebody said that this workbook does not follow the office. */
  readonly isDeclined: boolean;
  /** Handle of the office's file that was taken last; "" where none was. */
  readonly taken: string;
  /** Handle that the workbook's catalogue had then: as long as it has that, nobody has changed a row. */
  readonly handle: string;
}

export const NO_OFFICE_MEMORY: OfficeMemory = { isDeclined: false, taken: '', handle: '' };

const KEY = 'office';
const Stored = v.object({ isDeclined: v.boolean(), taken: v.string(), handle: v.string() });

/** What the workbook knows; nothing where its file holds anything else under our key. */
export const officeMemory = (workbook: Workbook): Promise<OfficeMemory> => recalled(workbook, KEY, Stored, NO_OFFICE_MEMORY);

/** Remembers with the workbook that it does not follow the office, or does again. */
export async function declineOffice(workbook: Workbook, isDeclined: boolean): Promise<void> {
  await workbook.remember(KEY, JSON.stringify({ ...(await officeMemory(workbook)), isDeclined }));
}

/** Remembers with the workbook which catalogue of the office it has taken, and the handle that came of it. */
export async function rememberTaken(workbook: Workbook, taken: string, handle: string): Promise<void> {
  await workbook.remember(KEY, JSON.stringify({ isDeclined: false, taken, handle }));
}
