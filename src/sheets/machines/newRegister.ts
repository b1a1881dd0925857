import { machinesTable } from '../../core/catalogue/tables/machinesTable';
import type { MeasureUnit } from '../../core/units/measureUnit';
import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { SPARE_ROWS, type RegisterPlace, type RegisterField } from './registerPlace';
import { DATE_FORMAT } from '../print/dateFormat';

const FIELDS = Object.entries(machinesTable.fields) as [RegisterField, { heading: string; kind: string }][];
const WIDTHS: Partial<Record<RegisterField, number>> = { machine: 130, hose: 110, fitting: 190, date: 110, note: 170 };
const WIDTH = 64;

/** The sheet of a register that is yet to be made: its headings, and the place of its first row. */
export interface NewRegister {
  readonly changes: readonly Change[];
  readonly undo: readonly Change[];
  readonly place: RegisterPlace;
}

/**
 * A register on a sheet of its own.
 * @param exists whether the sheet is there, blank
 * @param diameter unit of the catalogue's crimp diameters
 */
export function newRegister(sheet: string, exists: boolean, diameter: MeasureUnit): NewRegister {
  const at = (row: number, column: number, rows: number, columns: number) => ({
    sheet,
    address: addressOf({ row, column, rows, columns }),
  });
  const headings = FIELDS.map(([, { heading, kind }]) => (kind === 'length' ? `${heading} (${diameter.symbol})` : heading));
  const all = at(0, 0, 1, FIELDS.length);
  const changes: readonly Change[] = [
    ...(exists ? [] : [{ kind: 'addSheet' as const, sheet }]),
    { kind: 'values', at: all, values: [headings] },
    { kind: 'style', at: all, style: { bold: true, wrap: true, border: 'bottom' } },
    ...FIELDS.map(([field], column): Change => ({
      kind: 'style',
      at: at(0, column, 1, 1),
      style: { columnWidth: WIDTHS[field] ?? WIDTH },
    })),
  ];
  const columns = Object.fromEntries(FIELDS.map(([field], column) => [field, column])) as Record<RegisterField, number>;
  const place: RegisterPlace = {
    columns,
    row: 1,
    extended: at(0, 0, SPARE_ROWS + 2, FIELDS.length),
    dateFormat: DATE_FORMAT,
  };
  return { changes, undo: [{ kind: 'values', at: all, values: [headings.map(() => '')] }], place };
}
