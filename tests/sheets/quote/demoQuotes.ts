import { treeTables } from '../../core/catalogue/treeCatalogue';
import type { RawTable } from '../../../src/core/catalogue/rawTable';
import { catalogueTables, TABLE_NAMES } from '../../../src/core/catalogue/tables/catalogueTables';
import { blockOf } from '../../../src/workbook/a1';
import type { Change } from '../../../src/workbook/workbook';
import type { FakeCell } from '../../workbook/fakeWorkbook';

const cells = (table: RawTable): FakeCell[][] => table.map(row => row.map(cell => (cell ?? '') as FakeCell));

/** The small invented catalogue in sheets, and job lines: never crimp from them. */
export function demoQuotes(): Record<string, FakeCell[][]> {
  const tables = TABLE_NAMES.filter(name => treeTables[name as keyof typeof treeTables]);
  const sheets = tables.map(name => [catalogueTables[name].sheet, cells(treeTables[name as keyof typeof treeTables]!)] as const);
  const range = (name: string) => (tables.includes(name as never) ? `${catalogueTables[name as 'hoses'].sheet}!A1:P40` : '');
  const formula = `=HOSE.CATALOGUE(${['hoses', 'fittings', 'crimps', 'machines', 'rates', 'dies', 'guards', 'derating'].map(range).join(',')})`;
  return {
    Jobs: [
      ['Line', 'Wanted for', 'Hose', 'Fitting A', 'Fitting B', 'Overall length (mm)', 'Quantity'],
      [1, 'Topper lift', 'Alder DN 12', 'Alder cone straight DN 12', 'Alder cone elbow DN 12', 1250, 4],
      [2, 'Suction', 'Willow DN 25', 'Alder cone straight DN 25', 'Alder cone straight DN 25', 900, 1],
      [3, 'Not measured yet', 'Alder DN 12', 'Alder cone straight DN 12', 'Alder cone straight DN 12', '', 1],
      [4, 'Topper tilt', 'Alder DN 25', 'Alder cone straight DN 25', 'Alder cone straight DN 25', 700, 2],
    ],
    Parts: [['Catalogue', { formula, value: 'CAT-00000000 (mm, bar; 4 hoses, 7 fittings, 5 crimps)' }]],
    ...Object.fromEntries(sheets),
  };
}

/** The new sheets as they would stand after the batch that writes them; formulas show 1. */
export function asStanding(changes: readonly Change[]): Record<string, FakeCell[][]> {
  const sheets: Record<string, FakeCell[][]> = {};
  for (const change of changes) {
    if (change.kind !== 'values' && change.kind !== 'formulas') continue;
    const rows = (sheets[change.at.sheet] ??= []);
    const { row, column } = blockOf(change.at.address)!;
    const cells = change.kind === 'values' ? change.values : change.formulas;
    cells.forEach((line, r) =>
      line.forEach((cell, c) => {
        const isFormula = change.kind === 'formulas' && cell !== '';
        (rows[row + r] ??= [])[column + c] = isFormula ? { formula: String(cell), value: 1 } : cell;
      }),
    );
  }
  const filled = (rows: FakeCell[][]) => Array.from(rows, row => Array.from(row ?? [], cell => cell ?? ''));
  return Object.fromEntries(Object.entries(sheets).map(([sheet, rows]) => [sheet, filled(rows)]));
}
