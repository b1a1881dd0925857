import { blockAddress } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { HEAD_FILL, INPUT_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import { decimalsOf } from '../catalogue/currencyFormat';
import type { StopLine } from '../jobs/quoteLine';
import { type PurchaseInput, type PurchaseItem, hoseUnit, purchaseItems, REEL, FIRST } from './purchaseItems';

const HEADINGS = [
  'Kind',
  'Part',
  'Needed',
  'Unit',
  'In stock',
  'Reel or pack',
  'To buy (reels, packs)',
  'Bought',
  'Price per unit',
  'Amount',
  'Share of a reel',
  'Buy by',
  'Note',
];
const [NEEDED, BOUGHT, SHARE, BUY_BY, NOTE] = [2, 7, 10, 11, 12];
const SCRAP = '$C$5';

/** Formulas of an item's columns `To buy` to `Share of a reel`. */
function formulasOf({ packs, price, withScrap, buyBy, kind }: PurchaseItem, row: number, decimals: number): string[] {
  const long = `$C${row}/(1-${SCRAP})`;
  const wanted = withScrap ? `MAX(0,${long}-$E${row})` : `MAX(0,$C${row}-$E${row})`;
  const hasPack = `IF(ISNUMBER($F${row}),$F${row}>0,FALSE)`;
  const isPacked = buyBy === undefined ? hasPack : `AND(${hasPack},$L${row}="${REEL}")`;
  // A quotient that is whole but for its last binary digits must not open another pack.
  const whole = `ROUNDUP(ROUND(${wanted}/$F${row},6),0)`;
  // Where the rack is enough, nothing is bought by the metre either.
  const byLength = packs === undefined ? wanted : packs === 0 ? '0' : `MAX(0,${long}-$E${row})`;
  const counted = packs === undefined ? whole : String(packs);
  return [
    `=IF(${isPacked},${counted},${packs === undefined ? '""' : `IF($L${row}="${REEL}",${packs},"")`})`,
    `=IF(${isPacked},$G${row}*$F${row},${byLength})`,
    `=${price}`,
    `=IF(ISNUMBER($I${row}),ROUND($H${row}*$I${row},${decimals}),"no price")`,
    kind === 'Hose' ? `=IF(${hasPack},${long}/$F${row},"")` : '',
  ];
}

function writeTotal(writer: SheetWriter, items: readonly PurchaseItem[], { format }: PurchaseInput): number {
  const [first, last] = [FIRST + 1, FIRST + items.length];
  const amounts = `$J$${first}:$J$${last}`;
  const missing = `(${items.length}-COUNT(${amounts}))`;
  const row = FIRST + items.length + 1;
  writer.formulas(row, 8, [
    [
      `=IF(${missing}=0,"Total","Total, incomplete: "&${missing}&" without a price")`,
      `=ROUND(SUM(${amounts}),${decimalsOf(format)})`,
    ],
  ]);
  writer.format(row, 9, 1, 1, format).style(row, 8, 1, 2, { bold: true, border: 'bottom' });
  return row;
}

const stopText = (stops: readonly StopLine[]) =>
  stops.length === 0 ? '' : `STOP, nothing bought for: ${stops.map(({ line, sentence }) => `${line}: ${sentence}`).join('; ')}`;

/** A new sheet with what has to be bought: hose in reels, fittings and ferrules in packs, guards by length. */
export function purchaseSheet(input: PurchaseInput): readonly Change[] {
  const { sheet, source, stops, catalogue, scrap, format, units } = input;
  const items = purchaseItems(input);
  const decimals = decimalsOf(format);
  const writer = new SheetWriter(sheet)
    .values(0, 0, [
      ['Purchase list'],
      [`From ${source}`],
      ['Prices from'],
      [
        `What is in stock goes into its column. Buy by: “${REEL}”, or the unit (${hoseUnit(units)}) where the supplier cuts it. Amounts follow.`,
      ],
    ])
    .formulas(2, 2, [[`=${catalogue}`]])
    .values(4, 0, [['Scrap fraction of hose']])
    .formulas(4, 2, [[scrap ? `=${scrap}` : '=0']])
    .style(0, 0, 1, 1, { bold: true, fontSize: 16 })
    .values(5, 0, [[stopText(stops)]])
    .style(5, 0, 1, 1, { bold: true, color: '#8F1D1D' })
    .format(4, 2, 1, 1, '0.0 %')
    .values(FIRST - 1, 0, [HEADINGS])
    .values(
      FIRST,
      0,
      items.map(({ kind, part, needed, unit }) => [kind, part, needed, unit]),
    )
    .formulas(
      FIRST,
      5,
      items.map((item, index) => [`=${item.pack}`, ...formulasOf(item, FIRST + 1 + index, decimals)]),
    )
    .values(
      FIRST,
      BUY_BY,
      items.map(({ buyBy = '', note }) => [buyBy, note]),
    )
    .format(FIRST, SHARE, items.length, 1, '0 %')
    .format(FIRST, 8, items.length, 2, format)
    .style(FIRST - 1, 0, 1, HEADINGS.length, { bold: true, fill: HEAD_FILL, wrap: true })
    .style(FIRST - 1, 0, items.length + 1, HEADINGS.length, { border: 'all' })
    .style(FIRST, NOTE, items.length, 1, { wrap: true })
    .widths(52, 190, 60, 36, 56, 60, 66, 60, 66, 72, 60, 46, 300);
  items.forEach(({ unit }, index) => {
    for (const column of [NEEDED, BOUGHT]) writer.format(FIRST + index, column, 1, 1, unit === 'pcs' ? '0' : '0.00');
  });
  items.forEach((item, index) => item.buyBy && writer.style(FIRST + index, BUY_BY, 1, 1, { fill: INPUT_FILL }));
  // Where a plan has counted the reels, the rack is the stock.
  items.forEach((item, index) => item.packs === undefined && writer.style(FIRST + index, 4, 1, 1, { fill: INPUT_FILL }));
  const last = writeTotal(writer, items, input);
  return writer
    .page({
      orientation: 'landscape',
      printArea: blockAddress(0, 0, last + 1, HEADINGS.length),
      titleRows: `${FIRST}:${FIRST}`,
      fitWidth: true,
    })
    .done();
}
