import { AMOUNT_PLACES, CONVERTED_PLACES } from '../../core/units/decimalPlaces';
import { lengthPer } from '../../core/catalogue/lengthPer';
import type { CatalogueUnits } from '../../core/catalogue/catalogueUnits';
import { Decimal } from '../../core/units/decimal';
import type { StopLine } from '../jobs/quoteLine';
import { lineText } from '../cutlist/planText';
import { lengthText } from '../table/lengthText';
import type { HoseNeed, PurchaseNeeds } from './purchaseNeeds';
import type { ReelsWanted } from './purchasePlan';

export const FIRST = 7;
export const REEL = 'reel';

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

export interface PurchaseItem {
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

const plainNumber = (value: Decimal) => value.toDecimalPlaces(AMOUNT_PLACES).toNumber();
/** `per m` → `m`. */
const unitCounted = (symbol: string) => symbol.replace(/^per /, '');

/** The unit in which hose is bought by length: `m`. */
export const hoseUnit = ({ perLength, length }: CatalogueUnits) => (perLength ? unitCounted(perLength.symbol) : length.symbol);

/** What no new reel has in one piece, before the note that counts by length: reels of it do not make the order possible. */
function beyondReel({ cuts, reelLength }: HoseNeed, { length: { symbol } }: CatalogueUnits): string {
  const beyond = cuts.filter(({ length }) => reelLength && length.gt(reelLength));
  if (!reelLength || beyond.length === 0) return '';
  const lines = beyond.map(cut => lineText({ ...cut, label: '', cutLength: cut.length }, symbol));
  return `longer than a reel of ${lengthText(reelLength, symbol)} ${symbol}: ${lines.join('; ')}; `;
}

export function purchaseItems({ needs, reels, units, catalogue, hoseBy }: PurchaseInput): PurchaseItem[] {
  const per = units.perLength;
  const long = (length: Decimal) => plainNumber(per ? lengthPer(units.length, length, per) : length);
  const unit = hoseUnit(units);
  const row = (index: number) => FIRST + 1 + index;
  const divisor = per
    ? new Decimal(1).div(lengthPer(units.length, new Decimal(1), per)).toDecimalPlaces(CONVERTED_PLACES)
    : new Decimal(1);
  const items: PurchaseItem[] = needs.hoses.map((need, index) => ({
    kind: 'Hose',
    part: need.hose,
    needed: long(need.total),
    unit,
    pack: `IFERROR(HOSE.HOSEDATA(${catalogue},$B${row(index)},"reel length")/${divisor},"")`,
    packs: reels?.[index]?.reels,
    price: `IFERROR(HOSE.HOSEDATA(${catalogue},$B${row(index)},"price per length"),"")`,
    withScrap: reels?.[index]?.reels === undefined,
    buyBy: hoseBy === 'reel' ? REEL : unit,
    note: reels?.[index]?.note ?? `${beyondReel(need, units)}cut lengths plus scrap; ends left on reels are not counted`,
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
      unit: price ? unitCounted(price.unit.symbol) : units.length.symbol,
      pack: '""',
      price: price ? `IFERROR(${price.formula(`$B${row(items.length)}`)},"")` : '""',
      withScrap: true,
      note: `cut lengths plus scrap${shown ? `; size ${shown}` : ''}`,
    });
  }
  return items;
}
