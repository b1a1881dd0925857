import { hostBlocks } from '../../workbook/hostTable';
import type { Workbook } from '../../workbook/workbook';
import type { ColumnRead, RoleChoice } from './columnsRead';
import type { FoundTable } from './findTables';
import { knownHeading } from './headingRow';
import { likelyHeadings } from './likelyHeadings';
import { SheetCells } from './sheetCells';
import { tableAnswers, type TableAnswers, type TableKind } from './tableAnswers';

/** What the headings of one kind of table can mean. */
export interface HeadingKind {
  readonly kind: TableKind;
  readonly roles: readonly RoleChoice[];
  /** What it takes to be such a table: of each group one role at least. */
  readonly needs: readonly (readonly string[])[];
  /** The columns of a table, with what each is read as. */
  columnsOf(cells: SheetCells, table: FoundTable, answers: TableAnswers): readonly ColumnRead[];
}

/** A row that may hold the headings, with what they mean so far. */
export interface HeadingProposal {
  readonly table: FoundTable;
  readonly columns: readonly ColumnRead[];
  /** What is still to be said: of each group one. */
  readonly missing: readonly (readonly string[])[];
  /** Most of the headings are words that we know: it is rather a table of another kind. */
  readonly isKnown: boolean;
}

/** The rows of a sheet that may hold the headings of a kind of table, the likeliest first; none where nothing looks like it. */
export async function headingProposals(workbook: Workbook, sheet: string, of: HeadingKind): Promise<readonly HeadingProposal[]> {
  const used = await workbook.used(sheet);
  if (!used) return [];
  const [tables, layout, answers] = await Promise.all([
    workbook.tables(sheet),
    workbook.layout(sheet),
    tableAnswers(workbook, of.kind, sheet),
  ]);
  const cells = new SheetCells(used, layout);
  const labelOf = (role: string) => of.roles.find(each => each.role === role)?.label ?? role;
  return likelyHeadings(cells, hostBlocks(tables)).map(table => {
    const columns = of.columnsOf(cells, table, answers);
    const has = (role: string) => columns.some(each => each.role === role);
    const missing = of.needs.filter(group => !group.some(has)).map(group => group.map(labelOf));
    const isKnown = columns.filter(({ heading }) => knownHeading(heading)).length * 2 > columns.length;
    return { table, columns, missing, isKnown };
  });
}
