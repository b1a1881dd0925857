import type { Catalogue } from '../../core/catalogue/catalogue';
import { removedParts, type RemovedPart } from '../../core/catalogue/removedParts';
import { partKey } from '../../core/catalogue/partName';
import { catalogueTables } from '../../core/catalogue/tables/catalogueTables';
import { measureUnit } from '../../core/units/measureUnit';
import { Decimal } from '../../core/units/decimal';
import type { RangeAddress, Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import { NoJobs, readJobs, type JobWishes } from '../jobs/readJobs';

/** Where a part is named: job lines of a sheet, crimp rows, records of a machine. */
export interface NamedPart {
  readonly name: string;
  /** `Jobs`, `Crimps`, `Machines`. */
  readonly sheet: string;
  /** The job line; undefined for rows of the catalogue itself, which are rewritten. */
  readonly at: RangeAddress | undefined;
}

/** A part that a new catalogue no longer has, though rows of the workbook name it. */
export interface RemovedInUse {
  readonly name: string;
  readonly table: RemovedPart['table'];
  /** `Jobs rows 2, 5`, `Crimps (3 rows)`. */
  readonly uses: readonly string[];
  /** The first job line that names it. */
  readonly at: RangeAddress | undefined;
}

/** Every line counts, whatever its status and however it would be read for a paper. */
const WISHES: JobWishes = {
  step: { value: new Decimal(1), unit: measureUnit('length', 'mm')! },
  take: new Set(['hidden', 'below', 'done', 'planned']),
  plainEnds: true,
  whateverStatus: true,
};
const ROWS_NAMED = 5;

async function jobParts(workbook: Workbook, sheet: string, standing: WorkbookCatalogue): Promise<readonly NamedPart[]> {
  const used = await workbook.used(sheet);
  if (!used) return [];
  const block = { row: used.row, column: used.column, rows: used.values.length, columns: used.values[0]!.length };
  try {
    const { lines } = await readJobs(workbook, WISHES, { sheet, block, isChoice: true }, standing);
    return lines.flatMap(({ hose, ends, guard, row }) =>
      [hose, guard, ...ends.flatMap(({ fitting, ferrule }) => [fitting, ferrule])]
        .filter(name => name !== '')
        .map(name => ({ name, sheet, at: { sheet, address: `A${row}` } })),
    );
  } catch (error) {
    if (error instanceof NoJobs) return [];
    throw error;
  }
}

/** Parts that crimp rows and machines' records of a catalogue name. */
function catalogueParts({ crimps, machines }: Catalogue): readonly NamedPart[] {
  const named = (sheet: string, rows: readonly { readonly hose?: string; readonly fitting?: string }[]) =>
    rows.flatMap(({ hose, fitting }) => [hose, fitting].flatMap(name => (name ? [{ name, sheet, at: undefined }] : [])));
  return [...named(catalogueTables.crimps.sheet, crimps), ...named(catalogueTables.machines.sheet, machines)];
}

function usesText(sheet: string, uses: readonly NamedPart[]): string {
  const rows = [...new Set(uses.flatMap(({ at }) => (at ? [Number(at.address.slice(1))] : [])))];
  if (rows.length === 0) return `${sheet} (${uses.length} ${uses.length === 1 ? 'row' : 'rows'})`;
  const more = rows.length > ROWS_NAMED ? ` and ${rows.length - ROWS_NAMED} more` : '';
  return `${sheet} ${rows.length === 1 ? 'row' : 'rows'} ${rows.slice(0, ROWS_NAMED).join(', ')}${more}`;
}

/** The removed parts that are named somewhere, with where. */
export function removedInUse(before: Catalogue, after: Catalogue, named: readonly NamedPart[]): readonly RemovedInUse[] {
  const all = [...named, ...catalogueParts(after)];
  const removed = removedParts(
    before,
    after,
    all.map(({ name }) => name),
  );
  return removed.map(({ name, table }) => {
    const own = all.filter(each => partKey(each.name) === partKey(name));
    const sheets = [...new Set(own.map(({ sheet }) => sheet))];
    const ferrules = own.length === 0 ? [`${catalogueTables.crimps.sheet} (as a ferrule)`] : [];
    return {
      name,
      table,
      uses: [
        ...sheets.map(sheet =>
          usesText(
            sheet,
            own.filter(each => each.sheet === sheet),
          ),
        ),
        ...ferrules,
      ],
      at: own.find(({ at }) => at)?.at,
    };
  });
}

/** The parts that job lines of a workbook name, on every sheet but those of the catalogue. */
export async function partsInJobs(workbook: Workbook, standing: WorkbookCatalogue): Promise<readonly NamedPart[]> {
  const own = new Set(standing.tables.map(({ at }) => at.sheet));
  const sheets = (await workbook.sheets()).filter(sheet => !own.has(sheet));
  const found: NamedPart[] = [];
  for (const sheet of sheets) found.push(...(await jobParts(workbook, sheet, standing)));
  return found;
}
