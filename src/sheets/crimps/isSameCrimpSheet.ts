import type { CellValue, RangeContent } from '../../workbook/workbook';
import type { CrimpSheet } from './crimpSheet';

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

const textOf = ({ answers }: CrimpSheet) => JSON.stringify(Object.values(answers).map(said => [...said]));
const layoutText = ({ cells: { layout } }: CrimpSheet) => JSON.stringify([[...layout.hiddenRows], layout.merges]);
const blockText = ({ own }: CrimpSheet) => JSON.stringify(own?.table.block ?? null);

/** Whether two looks at the workbook show the same crimps: then nothing has to be worked out again when only the selection moved. */
export function isSameCrimpSheet(a: CrimpSheet, b: CrimpSheet): boolean {
  const [chosen, others] = [a.chosen, b.chosen];
  return (
    a.catalogue === b.catalogue &&
    chosen?.size === others?.size &&
    [...(chosen ?? [])].every(row => others!.has(row)) &&
    blockText(a) === blockText(b) &&
    textOf(a) === textOf(b) &&
    layoutText(a) === layoutText(b) &&
    isSameContent(a.cells.used, b.cells.used)
  );
}
