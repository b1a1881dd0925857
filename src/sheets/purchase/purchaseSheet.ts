import { AMOUNT_PLACES, CONVERTED_PLACES } from '../../core/units/decimalPlaces';
import { blockAddress } from '../../workbook/a1';
import { lengthPer } from '../../core/catalogue/lengthPer';
import type { CatalogueUnits } from '../../core/catalogue/catalogueUnits';
import { Decimal } from '../../core/units/decimal';
import type { Change } from '../../workbook/workbook';
import { HEAD_FILL, INPUT_FILL } from '../print/sheetFills';
import { SheetWriter } from '../print/sheetWriter';
import { decimalsOf } from '../catalogue/currencyFormat';
import type { StopLine } from '../jobs/quoteLine';
import type { PurchaseNeeds } from './purchaseNeeds';
import type { ReelsWanted } from './purchasePlan';

/** How a supplier sells hose: in whole reels, or as long as it is ordered. */
export type HoseBy = 'reel' | 'length';

/** Everything a purchase list is made of. */
export interface PurchaseInput {
  /** A sheet name that is not taken. */
  readonly sheet: string;
  /** What it was made from: `Jobs, 9 lines, 2026-10-05`. */
  readonly source: string;
  readonly needs: PurchaseNeeds;
  /** Lines that must not be made: named on top, nothing is bought for them. */
  readonly stops: readonly StopLine[];
  /** One entry a hose, from cut plans; undefined = by length and scrap. */
  readonly reels: readonly ReelsWanted[] | undefined;
  /** Whether hose is bought in whole reels or by the metre (foot) at first; each row of the sheet can be changed. */
  readonly hoseBy: HoseBy;
  readonly units: CatalogueUnits;
  /** How a formula names the catalogue's cell, and that of the scrap fraction. */
  readonly catalogue: string;
  readonly scrap: string | undefined;
  readonly format: string;
}

interface Item {
  readonly kind: string;
  readonly part: string;
  readonly needed: number;
  readonly unit: string;
  /** Reel length or pack quantity, without `=`. */
  readonly pack: string;
  /** Packs to buy, where a plan says so. */
  readonly packs?: number | undefined;
  readonly price: string;
  readonly withScrap: boolean;
  /** What stands in `Buy by` at first; undefined where there is no choice. */
  readonly buyBy?: string;
  readonly note: string;
}

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
const FIRST = 7;
const REEL = 'reel';
const [NEEDED, BOUGHT, SHARE, BUY_BY, NOTE] = [2, 7, 10, 11, 12];
const SCRAP = '$C$5';

const plainNumber = (value: Decimal) => value.toDecimalPlaces(AMOUNT_PLACES).toNumber();
/** `per m` → `m`. */
const counted = (symbol: string) => symbol.replace(/^per /, '');

/** The unit in which hose is bought by length: `m`. */
const hoseUnit = ({ perLength, length }: CatalogueUnits) => (perLength ? counted(perLength.symbol) : length.symbol);

function itemsOf({ needs, reels, units, catalogue, hoseBy }: PurchaseInput): Item[] {
  const per = units.perLength;
  const long = (length: Decimal) => plainNumber(per ? lengthPer(units.length, length, per) : length);
  const unit = hoseUnit(units);
  const row = (index: number) => FIRST + 1 + index;
  const divisor = per
    ? new Decimal(1).div(lengthPer(units.length, new Decimal(1), per)).toDecimalPlaces(CONVERTED_PLACES)
    : new Decimal(1);
  const items: Item[] = needs.hoses.map(({ hose, total }, index) => ({
    kind: 'Hose',
    part: hose,
    needed: long(total),
    unit,
    pack: `IFERROR(HOSE.HOSEDATA(${catalogue},$B${row(index)},"reel length")/${divisor},"")`,
    packs: reels?.[index]?.reels,
    price: `IFERROR(HOSE.HOSEDATA(${catalogue},$B${row(index)},"price per length"),"")`,
    withScrap: reels?.[index]?.reels === undefined,
    buyBy: hoseBy === 'reel' ? REEL : unit,
    note: reels?.[index]?.note ?? 'cut lengths plus scrap; ends left on reels are not counted',
  }));
  for (const { kind, part, count } of needs.parts) {
    const at = `$B${row(items.length)}`;
    const look = (field: string) => `IFERROR(HOSE.FITTINGDATA(${catalogue},${at},"${field}"),"")`;
    const note = kind === 'Ferrule' ? 'from the crimp data' : '';
    const [pack, price] = [look('pack quantity'), look('price')];
    items.push({ kind, part, needed: count, unit: 'pcs', pack, price, withScrap: false, note });
  }
  for (const { guard, price, length } of needs.guards) {
    const shown = price?.guard.size;
    items.push({
      kind: 'Guard',
      part: guard,
      needed: price ? plainNumber(lengthPer(units.length, length, price.unit)) : length.toNumber(),
      unit: price ? counted(price.unit.symbol) : units.length.symbol,
      pack: '""',
      price: price ? `IFERROR(${price.formula(`$B${row(items.length)}`)},"")` : '""',
      withScrap: true,
      note: `cut lengths plus scrap${shown ? `; size ${shown}` : ''}`,
    });
  }
  return items;
}

/** Formulas of an item's columns `To buy` to `Share of a reel`. */
function formulasOf({ packs, price, withScrap, buyBy, kind }: Item, row: number, decimals: number): string[] {
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

function writeTotal(writer: SheetWriter, items: readonly Item[], { format }: PurchaseInput): number {
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
  const items = itemsOf(input);
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
