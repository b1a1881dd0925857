import { columnsRead } from '../table/columnsRead';
import type { HeadingKind } from '../table/headingProposals';
import { JOB_ROLE_CHOICES } from './jobRoles';
import { jobColumns } from './jobTable';

/** What the headings of a job sheet can mean, for a sheet in which none is known. */
export const JOB_HEADINGS: HeadingKind = {
  kind: 'jobs',
  roles: JOB_ROLE_CHOICES,
  needs: [['hose'], ['overall', 'cutLength']],
  columnsOf: (cells, table, { role }) => columnsRead(table, jobColumns(cells, table, role)),
};
