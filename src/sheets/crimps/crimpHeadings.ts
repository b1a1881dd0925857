import type { HeadingKind } from '../table/headingProposals';
import { CRIMP_ROLE_CHOICES } from './crimpRoles';
import { crimpTable } from './crimpTable';
import { crimpColumnsRead } from './readCrimpRows';

/** What the headings of a sheet of crimps can mean, for a sheet in which none is known. */
export const CRIMP_HEADINGS: HeadingKind = {
  kind: 'crimps',
  roles: CRIMP_ROLE_CHOICES,
  needs: [['reading']],
  columnsOf: (cells, table, answers) => crimpColumnsRead(crimpTable(cells, table, answers)),
};
