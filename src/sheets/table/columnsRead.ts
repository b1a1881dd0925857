import type { FoundTable } from './findTables';
import { HEADING_WORDS } from './headingWords';
import { headingNames, type ColumnsByRole, type RoleList } from './tableColumns';
import { correctionKey } from './headingCorrections';

/** A column of somebody's table and what it was read as. */
export interface ColumnRead {
  /** Zero-based on the sheet. */
  readonly column: number;
  readonly heading: string;
  /** Undefined where it was not read at all. */
  readonly role: string | undefined;
}

/** What a column can be, as it is shown where somebody chooses. */
export interface RoleChoice {
  readonly role: string;
  readonly label: string;
}

/** The columns of a table that have a heading, with what each was read as. */
export function columnsRead<Role extends string>({ headings, block }: FoundTable, columns: ColumnsByRole<Role>): ColumnRead[] {
  const roles = new Map(Object.entries(columns).map(([role, column]) => [column, role]));
  return headingNames(headings).flatMap((heading, index) => {
    const column = block.column + index;
    return heading === '' ? [] : [{ column, heading, role: roles.get(column) }];
  });
}

/** The columns of several tables, each heading once. */
export function columnsOfTables<Role extends string>(
  tables: readonly { readonly table: FoundTable; readonly columns: ColumnsByRole<Role> }[],
): readonly ColumnRead[] {
  const all = tables.flatMap(({ table, columns }) => columnsRead(table, columns));
  return all.filter(
    ({ heading }, index) => all.findIndex(each => correctionKey(each.heading) === correctionKey(heading)) === index,
  );
}

/** The roles of a kind of table with the words that people call them. */
export function roleChoices<Role extends string>(roles: RoleList<Role>): readonly RoleChoice[] {
  return roles.map(([role, word]) => ({ role, label: word ? HEADING_WORDS[word].label : role }));
}
