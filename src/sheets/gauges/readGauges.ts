import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { anyMeasureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import { addressOf } from '../../workbook/a1';
import { hostBlocks } from '../../workbook/hostTable';
import type { Workbook } from '../../workbook/workbook';
import { columnsRead, roleChoices } from '../table/columnsRead';
import { findTables, type FoundTable } from '../table/findTables';
import type { HeadingKind } from '../table/headingProposals';
import { SheetCells } from '../table/sheetCells';
import { tableAnswers } from '../table/tableAnswers';
import { columnsByRole, type ColumnsByRole, type RoleList } from '../table/tableColumns';
import { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';
import { tableRows, type LeftOutRow, type ReadReport } from '../table/tableRows';
import { intervalFromText, intervalUnder } from './checkInterval';
import { gaugeKindOf, type Gauge } from './gauge';

export const GAUGES_SHEET = 'Gauges';

export type GaugeRole =
  'gauge' | 'kind' | 'checked' | 'due' | 'every' | 'unit' | 'uncertainty' | 'rangeLow' | 'rangeHigh' | 'resolution' | 'note';

const ROLES: RoleList<GaugeRole> = [
  ['gauge', 'gauge', 'caliper'],
  ['kind', 'kind', 'gaugeKind'],
  ['checked', 'checked', 'lastDone'],
  ['due', 'checkDue'],
  ['every', 'every'],
  ['unit', 'unit'],
  ['uncertainty', 'uncertainty'],
  ['rangeLow', 'rangeLow'],
  ['rangeHigh', 'rangeHigh'],
  ['resolution', 'resolution'],
  ['note', 'note'],
];
const NUMBERS: readonly GaugeRole[] = ['every', 'uncertainty', 'rangeLow', 'rangeHigh', 'resolution'];

/** What a column of gauges can be, as it is shown where somebody chooses. */
export const GAUGE_ROLE_CHOICES = roleChoices(ROLES);

/** What the headings of gauges can mean, for a sheet in which none is known. */
export const GAUGE_HEADINGS: HeadingKind = {
  kind: 'gauges',
  roles: GAUGE_ROLE_CHOICES,
  needs: [['gauge'], ['checked']],
  columnsOf: (_, table, { role }) => columnsRead(table, columnsByRole(table, ROLES, role)),
};

/** A table of gauges. */
export interface GaugeTable {
  readonly table: FoundTable;
  readonly columns: ColumnsByRole<GaugeRole>;
  readonly reader: TableReader<GaugeRole>;
}

/** The gauges of a workbook. */
export interface Gauges {
  readonly sheet: string;
  readonly gauges: readonly Gauge[];
  readonly report: ReadReport;
  readonly questions: readonly TableQuestion[];
  readonly table: GaugeTable;
}

function gaugeIn({ reader }: GaugeTable, row: number): Gauge {
  const problems: string[] = [];
  const attempt = <T>(read: () => T): T | undefined => {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      problems.push(error.message);
      return undefined;
    }
  };
  const number = (role: GaugeRole, label: string): Decimal | undefined =>
    attempt(() => reader.number(row, role, label, 'notNegative'));
  const unitText = reader.name(row, 'unit');
  const unit: MeasureUnit | undefined = unitText === '' ? undefined : anyMeasureUnit(unitText);
  if (unitText !== '' && !unit) problems.push(`unit is “${unitText}”: no unit that is known`);
  const every = attempt(() => {
    const stated = intervalFromText(reader.name(row, 'every'));
    const count = stated ? undefined : reader.number(row, 'every', 'interval', 'notNegative');
    return stated ?? (count && intervalUnder(reader.heading('every'), count));
  });
  const name = reader.name(row, 'gauge');
  const [rangeLow, rangeHigh] = [number('rangeLow', 'lower end of the range'), number('rangeHigh', 'upper end of the range')];
  if (rangeLow && rangeHigh && rangeLow.gte(rangeHigh)) problems.push('the range ends below where it begins');
  return {
    row: row + 1,
    name,
    kind: gaugeKindOf(`${reader.name(row, 'kind')} ${reader.name(row, 'kind') === '' ? name : ''}`),
    checked: attempt(() => reader.moment(row, 'checked', 'day of the check')),
    every,
    due: attempt(() => reader.moment(row, 'due', 'day of the next check')),
    unit,
    uncertainty: number('uncertainty', 'U'),
    rangeLow,
    rangeHigh,
    resolution: number('resolution', 'resolution'),
    note: reader.name(row, 'note'),
    problems,
  };
}

/**
 * Reads the sheet Gauges, hidden rows too.
 * @returns undefined where there is no such sheet, or none with gauges and when they were checked
 */
export async function readGauges(workbook: Workbook): Promise<Gauges | undefined> {
  const sheet = (await workbook.sheets()).find(name => name.toLowerCase() === GAUGES_SHEET.toLowerCase());
  const used = sheet === undefined ? undefined : await workbook.used(sheet);
  if (sheet === undefined || !used) return undefined;
  const [hostTables, layout, answers] = await Promise.all([
    workbook.tables(sheet),
    workbook.layout(sheet),
    tableAnswers(workbook, 'gauges', sheet),
  ]);
  const cells = new SheetCells(used, layout);
  const found = findTables(cells, hostBlocks(hostTables), answers.role).find(each => {
    const { gauge, checked } = columnsByRole(each, ROLES, answers.role);
    return gauge !== undefined && checked !== undefined;
  });
  if (!found) return undefined;
  const columns = columnsByRole(found, ROLES, answers.role);
  const table = { table: found, columns, reader: new TableReader(cells, found, columns, {}, answers, {}, NUMBERS) };
  const rules = { name: columns.gauge, keys: [columns.gauge!], takesHidden: true };
  const gauges: Gauge[] = [];
  const leftOut: LeftOutRow[] = [];
  for (const { row, kind } of tableRows(cells, found, rules)) {
    if (kind === 'line' || kind === 'below') gauges.push(gaugeIn(table, row));
    else leftOut.push({ row: row + 1, reason: kind });
  }
  const problems = gauges.flatMap(({ row, problems: own }): LeftOutRow[] =>
    own.length === 0 ? [] : [{ row, reason: 'problem', sentence: own.join('; ') }],
  );
  const report = {
    sheet,
    tables: [addressOf(found.block)],
    taken: gauges.map(({ row }) => row),
    leftOut: [...leftOut, ...problems],
  };
  return { sheet, gauges, report, questions: table.reader.questions, table };
}
