import type { Catalogue } from '../../core/catalogue/catalogue';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { hostBlocks } from '../../workbook/hostTable';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { workbookCatalogue } from '../catalogue/workbookCatalogue';
import { hostOf } from '../../workbook/shownWorkbook';
import { locateMeasurements, type LocatedMeasurements } from './locateMeasurements';
import { measurementUnit } from './measurementUnit';

/** The measurements around the selection, before their columns are read. */
export type MeasurementsView =
  | { readonly status: 'loading' }
  | { readonly status: 'failed'; readonly reason: string }
  | { readonly status: 'none' }
  | ({
      readonly status: 'ready';
      readonly used: RangeContent;
      /** As the headings or the numbers suggest. */
      readonly unit: LengthUnit;
      readonly catalogue: Catalogue | undefined;
      /** Rows that are selected, as the sheet shows them; undefined = the whole table. */
      readonly picked: ReadonlySet<number> | undefined;
    } & LocatedMeasurements);

interface KeptCatalogue {
  readonly cell: string;
  readonly catalogue: Catalogue | undefined;
}

const kept = new WeakMap<Workbook, KeptCatalogue>();

/** The workbook's catalogue; read again only where its cell shows another handle. */
async function currentCatalogue(workbook: Workbook): Promise<Catalogue | undefined> {
  const name = (await workbook.names()).find(each => each.name.toLowerCase() === 'catalogue');
  const [content] = name ? await workbook.read([name.at]) : [];
  const cell = String(content?.values[0]?.[0] ?? '');
  const before = kept.get(hostOf(workbook));
  if (before && cell !== '' && before.cell === cell) return before.catalogue;
  const catalogue = (await workbookCatalogue(workbook))?.catalogue;
  kept.set(hostOf(workbook), { cell, catalogue });
  return catalogue;
}

/** Reads the sheet of the selection and finds the measurements on it. */
export async function measurementsView(workbook: Workbook): Promise<MeasurementsView> {
  const selection = await workbook.selection();
  const [used, tables] = await Promise.all([workbook.used(selection.sheet), workbook.tables(selection.sheet)]);
  if (!used) return { status: 'none' };
  const rows = selection.values.length;
  const selected = { row: selection.row, column: selection.column, rows, columns: selection.values[0]?.length ?? 1 };
  const hostTables = hostBlocks(tables);
  const located = locateMeasurements(used, selected, hostTables);
  if (!located) return { status: 'none' };
  const { block } = located.table;
  const chosen = Array.from({ length: rows }, (_, index) => selection.row + index + 1).filter(
    row => row > block.row + 1 && row <= block.row + block.rows,
  );
  return {
    status: 'ready',
    used,
    ...located,
    unit: measurementUnit(used, located.table, located.proposed.columns),
    catalogue: await currentCatalogue(workbook),
    picked: chosen.length > 1 ? new Set(chosen) : undefined,
  };
}
