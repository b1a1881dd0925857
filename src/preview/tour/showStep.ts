import type { Workbook } from '../../workbook/workbook';
import type { TourStep } from './tour';

/** Enters what a step enters, and selects what it is about. */
export async function showStep(workbook: Workbook, { changes, select }: TourStep): Promise<void> {
  if (changes) await workbook.write(changes);
  await workbook.select(select);
}
