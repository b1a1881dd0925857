import { blockAddress, fixedReference } from '../../workbook/a1';
import { TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import type { Change } from '../../workbook/workbook';
import { HEAD_FILL, INPUT_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import { columnWidth } from './columnWidth';
import { fixed } from './quoteLayout';
import type { PricedTable } from '../catalogue/pricedTables';
import type { RaisedTable } from './raisedTable';
import { FIRST_RISE, RiseCells, type Rises } from './riseCells';
import { COMPARED, writeComparison, type ComparisonInput } from './whatIfComparison';
import type { UsableCatalogue } from '../catalogue/usableCatalogue';
import { DATE_FORMAT } from '../print/dateFormat';

/** Everything a what-if is made of. */
export interface WhatIfInput extends ComparisonInput {
  /** A sheet name that is not taken. */
  readonly sheet: string;
  readonly found: UsableCatalogue;
  readonly copies: Readonly<Partial<Record<PricedTable, RaisedTable>>>;
  readonly rises: Rises;
  readonly today: string;
}

/** The second CATALOGUE formula: copies where there are some, the original tables else. */
function raisedCatalogue({ found, copies }: Pick<WhatIfInput, 'found' | 'copies'>): string {
  const argument = (name: TableName) => {
    const copy = copies[name as PricedTable];
    const range = copy?.range ?? found.ranges[name];
    return range ? fixedReference(range) : '';
  };
  return `=HOSE.CATALOGUE(${TABLE_NAMES.map(argument).join(',').replace(/,+$/, '')})`;
}

function writeRises(writer: SheetWriter, { rises }: WhatIfInput, cells: RiseCells): void {
  const rows = [
    ...rises.families.map(({ family, rise }) => [family, 'hose family', rise] as const),
    ['Fittings', 'all', rises.fittings] as const,
    ['Guards', 'all', rises.guards] as const,
  ];
  writer
    .values(FIRST_RISE - 1, 0, [['Prices of', '', 'Rise'], ...rows])
    .format(FIRST_RISE, 2, rows.length, 1, '0.0 %')
    .style(FIRST_RISE - 1, 0, 1, 3, { bold: true, fill: HEAD_FILL })
    .style(FIRST_RISE - 1, 0, rows.length + 1, 3, { border: 'all' })
    .style(FIRST_RISE, 2, cells.end - FIRST_RISE, 1, { fill: INPUT_FILL });
}

/** One row a quote: what its lines come to now and after. */
function writeSums(writer: SheetWriter, { quotes, format }: WhatIfInput, first: number, lines: readonly [number, number]): void {
  const range = (column: number) => `${fixed(lines[0], column)}:${fixed(lines[1], column)}`;
  const sum = (row: number, column: number) => `=SUMIF(${range(0)},$A${row + 1},${range(column)})`;
  const missing = (row: number) =>
    `=IF(SUMPRODUCT((${range(0)}=$A${row + 1})*ISNUMBER(${range(11)}))=SUMPRODUCT((${range(0)}=$A${row + 1})*1),"","incomplete: a line has no price")`;
  writer.values(first, 0, [['Quote', '', 'Valid until', 'Lines now', 'Lines after', 'Difference', 'In per cent', 'Note']]);
  quotes.forEach(({ sheet, validUntil }, index) => {
    const row = first + 1 + index;
    writer.values(row, 0, [[sheet, '', validUntil ?? '']]);
    writer.formulas(row, 3, [
      [sum(row, 9), sum(row, 10), `=E${row + 1}-D${row + 1}`, `=IF(D${row + 1}>0,E${row + 1}/D${row + 1}-1,"")`, missing(row)],
    ]);
  });
  writer
    .format(first + 1, 2, quotes.length, 1, DATE_FORMAT)
    .format(first + 1, 3, quotes.length, 3, format)
    .format(first + 1, 6, quotes.length, 1, '0.0 %')
    .style(first, 0, 1, 8, { bold: true, fill: HEAD_FILL, wrap: true })
    .style(first, 0, quotes.length + 1, 8, { border: 'all' });
}

/** New sheets that compare open quotes before and after a rise of prices; the catalogue and the quotes are only read. */
export function whatIfSheet(input: WhatIfInput): readonly Change[] {
  const { sheet, found, rises, copies, quotes, today } = input;
  const cells = new RiseCells(rises.families.length);
  const sums = cells.end + 1;
  const head = sums + quotes.length + 2;
  const writer = new SheetWriter(sheet)
    .values(0, 0, [
      ['What-if: prices rise'],
      ['Catalogue now'],
      ['With the rise'],
      [`Made ${today}. Catalogue and quotes are only read; change a rise below and everything here follows.`],
    ])
    .style(0, 0, 1, 1, { bold: true, fontSize: 16 })
    .formulas(1, 2, [[`=${found.reference}`], [raisedCatalogue({ found, copies })]]);
  writeRises(writer, input, cells);
  const last = writeComparison(writer, input, head);
  writeSums(writer, input, sums, [head + 1, last]);
  const names = columnWidth(
    input.quotes.map(quote => quote.sheet),
    90,
    180,
  );
  writer.widths(names, 60, 110, 100, 62, 62, 62, 62, 60, 66, 66, 66, 18, 60, 60, 60, 60, 60).page({
    orientation: 'landscape',
    printArea: blockAddress(0, 0, last + 1, COMPARED),
    fitWidth: true,
  });
  const changes = [...Object.values(copies).flatMap(copy => copy.changes), ...writer.done()];
  // A formula may only name sheets that are there already.
  const isAdded = (change: Change) => change.kind === 'addSheet';
  return [...changes.filter(isAdded), ...changes.filter(change => !isAdded(change))];
}
