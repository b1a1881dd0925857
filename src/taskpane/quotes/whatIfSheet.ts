import { columnLetters } from '../../host/a1';
import { TABLE_NAMES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import type { Change } from '../../host/workbook';
import { SheetWriter } from '../sheets/sheetWriter';
import { guardCostFormula, type GuardPrices } from './guardPrices';
import { blockAddress, fixed } from './quoteLayout';
import { priceFormula } from './quoteLineFormulas';
import type { RaisedName, RaisedTable } from './raisedTable';
import type { ReadQuote } from './readQuote';
import { FIRST_RISE, RiseCells, type Rises } from './riseCells';
import { fixedReference, type WorkbookCatalogue } from './workbookCatalogue';

const FILL = '#E7EDF3';
const INPUT_FILL = '#FFF8E1';
const HANDLE = '$C$3';
const COLUMNS = [
  'Quote',
  'Line',
  'Wanted for',
  'Hose',
  'Quantity',
  'Price each now',
  'Price each after',
  'Difference each',
  'In per cent',
  'Line now',
  'Line after',
  'Line difference',
] as const;
/** First column of the working, after a gap. */
const WORKING = COLUMNS.length + 1;

/** Everything a what-if is made of. */
export interface WhatIfInput {
  /** A sheet name that is not taken. */
  readonly sheet: string;
  readonly found: WorkbookCatalogue;
  readonly rises: Rises;
  readonly copies: Readonly<Partial<Record<RaisedName, RaisedTable>>>;
  readonly quotes: readonly ReadQuote[];
  readonly guards: GuardPrices | undefined;
  readonly format: string;
  readonly today: string;
}

/** The second CATALOGUE formula: copies where there are some, the original tables else. */
function raisedCatalogue({ found, copies }: Pick<WhatIfInput, 'found' | 'copies'>): string {
  const argument = (name: TableName) => {
    const copy = copies[name as RaisedName];
    const range = copy?.range ?? found.ranges[name];
    return range ? fixedReference(range) : '';
  };
  return `=HOSE.CATALOGUE(${TABLE_NAMES.map(argument).join(',').replace(/,+$/, '')})`;
}

function raisedGuards({ guards, copies }: WhatIfInput): GuardPrices | undefined {
  const copy = copies.guards;
  if (!guards || !copy) return guards;
  return { ...guards, names: copy.column('Guard')!, sizes: copy.column('Size'), prices: copy.column('Price per length')! };
}

function guardAfter(input: WhatIfInput, quote: ReadQuote, row: number): string {
  if (!quote.has('guard')) return '0';
  const prices = raisedGuards(input);
  const guard = quote.cell('guard', row);
  if (!prices) return `IF(${guard}="",0,NA())`;
  const needsSize = prices.needsSize(String(quote.value('guard', row)));
  const size = needsSize ? `HOSE.HOSEDATA(${HANDLE},${quote.cell('hose', row)},"size")` : undefined;
  return guardCostFormula(prices, { guard, overall: quote.cell('overall', row), size });
}

/** The formulas of one line's comparison, and those of its working. */
function comparison(input: WhatIfInput, quote: ReadQuote, row: number, at: number): { shown: string[]; working: string[] } {
  const cell = (column: number) => `$${columnLetters(column)}${at + 1}`;
  const [hose, fittings, labour, , guard] = [0, 1, 2, 3, 4].map(index => cell(WORKING + index)) as [
    string,
    string,
    string,
    string,
    string,
  ];
  const after = priceFormula(quote.method, { hose, fittings, labour, guard }, name => quote.setting(name));
  const [quantity, now, then, lineNow, lineAfter] = [4, 5, 6, 9, 10].map(cell) as [string, string, string, string, string];
  const both = (formula: string) => `=IF(COUNT(${now},${then})=2,${formula},"not known")`;
  const parts = (['hose', 'fittingA', 'fittingB', 'overall', 'quantity'] as const).map(column => quote.cell(column, row));
  const label = quote.has('label') ? quote.cell('label', row) : undefined;
  return {
    shown: [
      `="${quote.sheet.replace(/"/g, '""')}"`,
      `=${quote.cell('line', row)}`,
      label ? `=IF(${label}="","",${label})` : '',
      `=${quote.cell('hose', row)}`,
      `=${quote.cell('quantity', row)}`,
      `=${quote.cell('each', row)}`,
      `=${after}`,
      both(`${then}-${now}`),
      both(`${then}/${now}-1`),
      `=${quote.cell('lineTotal', row)}`,
      `=IF(ISNUMBER(${then}),ROUND(${then}*${quantity},${DECIMALS}),"")`,
      both(`${lineAfter}-${lineNow}`),
    ],
    working: [`=HOSE.UNITCOST(${[HANDLE, ...parts].join(',')})`, `=${guardAfter(input, quote, row)}`],
  };
}

/** Finer than any currency: the line total itself is rounded by its quote. */
const DECIMALS = 4;

function writeRises(writer: SheetWriter, { rises }: WhatIfInput, cells: RiseCells): void {
  const rows = [
    ...rises.families.map(({ family, rise }) => [family, 'hose family', rise] as const),
    ['Fittings', 'all', rises.fittings] as const,
    ['Guards', 'all', rises.guards] as const,
  ];
  writer
    .values(FIRST_RISE - 1, 0, [['Prices of', '', 'Rise'], ...rows])
    .format(FIRST_RISE, 2, rows.length, 1, '0.0 %')
    .style(FIRST_RISE - 1, 0, 1, 3, { bold: true, fill: FILL })
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
    .format(first + 1, 2, quotes.length, 1, 'yyyy-mm-dd')
    .format(first + 1, 3, quotes.length, 3, format)
    .format(first + 1, 6, quotes.length, 1, '0.0 %')
    .style(first, 0, 1, 8, { bold: true, fill: FILL, wrap: true })
    .style(first, 0, quotes.length + 1, 8, { border: 'all' });
}

function writeComparison(writer: SheetWriter, input: WhatIfInput, head: number): number {
  const { quotes, format } = input;
  const lines = quotes.flatMap(quote => quote.rows.map(row => ({ quote, row })));
  const first = head + 1;
  const formulas = lines.map(({ quote, row }, index) => comparison(input, quote, row, first + index));
  writer
    .values(head, 0, [COLUMNS])
    .formulas(
      first,
      0,
      formulas.map(({ shown }) => shown),
    )
    .values(head, WORKING, [['Hose after', 'Fittings after', 'Labour after', 'Cost after', 'Guard after']])
    .formulas(
      first,
      WORKING,
      formulas.map(({ working }) => [working[0]!]),
    )
    .formulas(
      first,
      WORKING + 4,
      formulas.map(({ working }) => [working[1]!]),
    )
    .format(first, 5, lines.length, 3, format)
    .format(first, 8, lines.length, 1, '0.0 %')
    .format(first, 9, lines.length, 3, format)
    .format(first, WORKING, lines.length, 5, format);
  for (const [column, width] of [
    [0, COLUMNS.length],
    [WORKING, 5],
  ] as const) {
    writer.style(head, column, 1, width, { bold: true, fill: FILL, wrap: true });
    writer.style(head, column, lines.length + 1, width, { border: 'all' });
  }
  return first + lines.length - 1;
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
  writer.widths(90, 60, 110, 100, 62, 62, 62, 62, 60, 66, 66, 66, 18, 60, 60, 60, 60, 60).page({
    orientation: 'landscape',
    printArea: blockAddress(0, 0, last + 1, COLUMNS.length),
    fitWidth: true,
  });
  const changes = [...Object.values(copies).flatMap(copy => copy.changes), ...writer.done()];
  // A formula may only name sheets that are there already.
  const isAdded = (change: Change) => change.kind === 'addSheet';
  return [...changes.filter(isAdded), ...changes.filter(change => !isAdded(change))];
}
