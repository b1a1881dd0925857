import type { FoundTable } from '../table/findTable';
import type { TableUnits } from './offer';
import type { Columns } from '../table/proposeColumns';
import { unitOfHeading, type Role } from '../table/roles';

/** Units of length that the headings of a table state: of the overall lengths, and of readings and targets. */
export function tableUnits({ headings, block }: FoundTable, columns: Columns): TableUnits {
  const unitOf = (role: Role) => {
    const span = columns[role];
    return span && unitOfHeading(headings[span.first - block.column] ?? '');
  };
  return { overall: unitOf('overall'), diameter: unitOf('target') ?? unitOf('readings') ?? unitOf('tolerance') };
}
