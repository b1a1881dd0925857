import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import type { ColumnGroup } from './columnGroups';
import type { TableView } from './columnsView';
import type { FormulaForm } from './formulaForm';
import type { FormulaPlace } from './offer';

/** Where formulas are written: zero-based rows of the first and the last line, rows between them that get none, the first column. */
export interface FormulaRows {
  readonly top: number;
  readonly bottom: number;
  readonly others: ReadonlySet<number>;
  readonly first: number;
}

/** Columns of the sheet that are written, by the ids of their offers. */
type AddedAt = ReadonlyMap<string, number>;

function placeOf({ columns, catalogue }: TableView, added: AddedAt, first: number, last: number): FormulaPlace {
  const cells = (column: number, to = column) =>
    addressOf({ row: first, column, rows: last - first + 1, columns: to - column + 1 });
  return {
    index: last > first ? 0 : 1,
    rows: { first, last },
    catalogue: catalogue.reference ?? 'Catalogue',
    at: role => cells(columns[role]!.first, columns[role]!.last),
    added: id => (added.has(id) ? cells(added.get(id)!) : undefined),
  };
}

/** Single columns side by side are written in one block; beside a formula that fills several cells nothing is written into its way. */
function blocksOf(groups: readonly ColumnGroup[]): readonly (readonly ColumnGroup[])[] {
  const blocks: ColumnGroup[][] = [];
  for (const group of groups) {
    const last = blocks.at(-1);
    if (last && [...last, group].every(({ offers }) => offers.length === 1)) last.push(group);
    else blocks.push([group]);
  }
  return blocks;
}

/** The formulas of columns side by side. */
export function columnFormulas(
  view: TableView,
  form: FormulaForm,
  groups: readonly ColumnGroup[],
  { top, bottom, others, first }: FormulaRows,
): readonly Extract<Change, { kind: 'formulas' }>[] {
  const added = new Map(groups.flatMap(({ offers }) => offers).map(({ id }, i) => [id, first + i]));
  const rows = form === 'column' ? [top] : Array.from({ length: bottom - top + 1 }, (_, i) => top + i);
  const places = rows.map(row => {
    if (form === 'column') return placeOf(view, added, top, bottom);
    return others.has(row) ? undefined : placeOf(view, added, row, row);
  });
  return blocksOf(groups).map(block => {
    const column = added.get(block[0]!.offers[0]!.id)!;
    const address = addressOf({ row: top, column, rows: rows.length, columns: block.length });
    const formulas = places.map(place => block.map(({ formula }) => (place ? `=${formula(place)}` : '')));
    return { kind: 'formulas', at: { sheet: view.table.sheet, address }, formulas };
  });
}
