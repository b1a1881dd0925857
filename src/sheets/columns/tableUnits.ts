import { measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import type { CatalogueState } from '../catalogue/catalogueState';
import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';
import type { TableAnswers } from '../table/tableAnswers';
import { TableReader, type TableQuestion } from '../table/tableReader';
import { COLUMN_MEASURES, type Role } from './columnRoles';
import type { TableUnits } from './offer';
import type { Columns } from './tableColumnsOf';

/** Units of a table's overall lengths, and of its readings and targets; what its headings do not say becomes a question. */
export function tableUnits(
  cells: SheetCells,
  table: FoundTable,
  columns: Columns,
  answers: TableAnswers,
  { unit, diameterUnit }: CatalogueState,
): { readonly units: TableUnits; readonly questions: readonly TableQuestion[] } {
  const firsts = Object.fromEntries(Object.entries(columns).map(([role, { first }]) => [role, first]));
  const proposed = measureUnit('length', unit ?? diameterUnit ?? '');
  const proposals = proposed ? { length: proposed } : {};
  const reader = new TableReader<Role>(cells, table, firsts, COLUMN_MEASURES, answers, proposals);
  const symbol = (of: MeasureUnit | undefined) => of?.symbol;
  const diameter = reader.unitOf('target') ?? reader.unitOf('readings') ?? reader.unitOf('tolerance');
  return {
    units: {
      overall: symbol(reader.unitOf('overall')),
      diameter: symbol(diameter),
      asks: new Set(reader.questions.filter(({ asked }) => asked === 'unit').map(({ heading }) => heading)).size > 0,
    },
    questions: reader.questions,
  };
}
