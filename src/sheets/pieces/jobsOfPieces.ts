import * as v from 'valibot';
import { Decimal } from '../../core/units/decimal';
import { measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import { currentCatalogue } from '../catalogue/currentCatalogue';
import { NoJobs, readJobs, type Jobs } from '../jobs/readJobs';
import type { CatalogueRead } from '../jobs/jobTablesOf';
import { recalled } from '../table/recalled';

const KEY = 'pieces.jobs';
const Stored = v.array(v.string());

const sheetsPlanned = (workbook: Workbook): Promise<readonly string[]> => recalled(workbook, KEY, Stored, []);

/** Remembers with the workbook that pieces were planned for lines of a sheet. */
export async function rememberJobSheet(workbook: Workbook, sheet: string): Promise<void> {
  const known = await sheetsPlanned(workbook);
  if (!known.includes(sheet)) await workbook.remember(KEY, JSON.stringify([...known, sheet]));
}

/** What the bench can cut does not matter for the status of a line. */
const STEP = { value: new Decimal(1), unit: measureUnit('length', 'mm')! };

/**
 * The job sheets that pieces were planned from, each read whole, whatever is selected: all its tables, hidden rows and lines that are done.
 * @param read the catalogue, where it was read already
 */
export async function jobsOfPieces(workbook: Workbook, read?: CatalogueRead): Promise<readonly Jobs[]> {
  const [stated, sheets] = await Promise.all([sheetsPlanned(workbook), workbook.sheets()]);
  const known = stated.filter(each => sheets.includes(each));
  const catalogue = read ?? (known.length > 0 ? { catalogue: await currentCatalogue(workbook) } : undefined);
  const found: Jobs[] = [];
  for (const sheet of known) {
    const wishes = { step: STEP, take: new Set(['hidden', 'below'] as const), whateverStatus: true };
    const block = { row: 0, column: 0, rows: 1, columns: 1 };
    try {
      found.push(await readJobs(workbook, wishes, { sheet, block, isChoice: false }, catalogue));
    } catch (error) {
      if (!(error instanceof NoJobs)) throw error;
    }
  }
  return found;
}
