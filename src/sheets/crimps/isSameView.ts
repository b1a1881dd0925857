import type { CellValue, RangeContent } from '../../workbook/workbook';
import type { MeasurementsView } from './measurementsView';

const isSameCell = (a: CellValue | undefined, b: CellValue | undefined) =>
  a === b || (typeof a === 'object' && typeof b === 'object' && a.error === b.error && a.sentence === b.sentence);

function isSameTable<T>(
  a: readonly (readonly T[])[],
  b: readonly (readonly T[])[],
  isSame: (one: T, other: T) => boolean,
): boolean {
  return (
    a.length === b.length && a.every((row, r) => row.length === b[r]!.length && row.every((cell, c) => isSame(cell, b[r]![c]!)))
  );
}

function isSameContent(a: RangeContent, b: RangeContent): boolean {
  return (
    a.sheet === b.sheet &&
    a.address === b.address &&
    isSameTable(a.values, b.values, isSameCell) &&
    isSameTable(a.formats, b.formats, (one, other) => one === other)
  );
}

/** Whether two looks at the workbook show the same measurements: then nothing has to be worked out again when only the selection moved. */
export function isSameView(a: MeasurementsView, b: MeasurementsView): boolean {
  if (a.status !== 'ready' || b.status !== 'ready') return a.status === b.status && a.status !== 'failed';
  const [picked, others] = [a.picked, b.picked];
  return (
    a.catalogue === b.catalogue &&
    picked?.size === others?.size &&
    [...(picked ?? [])].every(row => others!.has(row)) &&
    a.table.block.row === b.table.block.row &&
    a.table.block.column === b.table.block.column &&
    a.table.block.rows === b.table.block.rows &&
    a.table.block.columns === b.table.block.columns &&
    isSameContent(a.used, b.used)
  );
}
