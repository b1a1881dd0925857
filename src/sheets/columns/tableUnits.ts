import { measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import type { CatalogueState } from '../catalogue/catalogueState';
import type { FoundTable } from '../table/findTables';
import type { SheetCells } from '../table/sheetCells';
import type { TableAnswers } from '../table/tableAnswers';
import { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';
import { lineRows, type TableLines } from './lineRows';
import { COLUMN_MEASURES, type Role } from './columnRoles';
import type { TableUnits } from './offer';
import type { Columns } from './tableColumnsOf';

/** Text in a row of the lines: units in a row of their own, remarks and totals are none of them. */
function holdsText({ cells, table, columns }: TableLines, column: number | undefined): boolean {
  if (column === undefined) return false;
  const { others } = lineRows({ cells, table, columns });
  const { block } = table;
  const rows = Array.from({ length: block.rows - 1 }, (_, i) => block.row + 1 + i).filter(row => !others.has(row));
  return rows.some(row => typeof cells.value(row, column) === 'string' && !cells.isEmpty(row, column));
}

/** Units of a table's overall lengths, and of its readings and targets; what its headings do not say becomes a question. */
export function tableUnits(
  cells: SheetCells,
  table: FoundTable,
  columns: Columns,
  answers: TableAnswers,
  { unit, diameterUnit, temperatureUnit }: CatalogueState,
): { readonly units: TableUnits; readonly questions: readonly TableQuestion[] } {
  const firsts: Partial<Record<Role, number>> = Object.fromEntries(
    Object.entries(columns).map(([role, { first }]) => [role, first]),
  );
  const proposed = measureUnit('length', unit ?? diameterUnit ?? '');
  const temperature = measureUnit('temperature', temperatureUnit ?? '');
  const proposals = { ...(proposed && { length: proposed }), ...(temperature && { temperature }) };
  const reader = new TableReader<Role>(cells, table, firsts, COLUMN_MEASURES, answers, proposals);
  const symbol = (of: MeasureUnit | undefined) => of?.symbol;
  const diameter = reader.unitOf('target') ?? reader.unitOf('readings') ?? reader.unitOf('tolerance');
  const asking = reader.questions.filter(({ asked }) => asked === 'unit').map(({ heading }) => heading);
  const ofTemperature = reader.has('temperature') ? reader.heading('temperature') : undefined;
  return {
    units: {
      overall: symbol(reader.unitOf('overall')),
      diameter: symbol(diameter),
      temperature: symbol(reader.unitOf('temperature')),
      isText: holdsText({ cells, table, columns }, firsts.overall),
      asks: asking.some(heading => heading !== ofTemperature),
      asksTemperature: ofTemperature !== undefined && asking.includes(ofTemperature),
    },
    questions: reader.questions,
  };
}
