import type { HeadingKind } from '../table/headingProposals';
import { COLUMN_ROLE_CHOICES } from './columnRoles';
import { columnsReadIn } from './columnsReadIn';
import { tableColumnsOf } from './tableColumnsOf';

/** What the headings of a table can mean to our functions, for a sheet in which none is known. */
export const COLUMN_HEADINGS: HeadingKind = {
  kind: 'jobs',
  roles: COLUMN_ROLE_CHOICES,
  needs: [['hose'], ['overall']],
  columnsOf: (cells, table, answers) => columnsReadIn({ table, columns: tableColumnsOf(cells, table, {}, answers) }),
};
