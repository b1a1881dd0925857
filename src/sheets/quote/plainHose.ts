import { partKey } from '../../core/catalogue/partName';
import { lengthRatio } from '../../core/catalogue/lengthPer';
import type { UsableCatalogue } from '../catalogue/usableCatalogue';
import { guardPrice } from '../catalogue/guardPrice';
import { rateNumber } from '../catalogue/rateNumber';
import type { QuoteLine } from '../jobs/quoteLine';

/** True for a hose that is sold without couplings: UNITCOST, which takes both, has no cost of it. */
export const isPlainHose = ({ fittingA, fittingB }: Pick<QuoteLine, 'fittingA' | 'fittingB'>): boolean =>
  fittingA === '' && fittingB === '';

/** What a plain hose costs: the same rates as of an assembly, without crimps. Formulas without `=`. */
export interface PlainHoseCost {
  /** Length × price ÷ (1 − scrap fraction). */
  readonly hose: (hose: string, length: string) => string;
  /** (set-up minutes ÷ quantity + minutes per cut) × labour per hour ÷ 60 */
  readonly labour: (quantity: string) => string;
  /** Length × guard's price ÷ (1 − scrap fraction): the guard that the line names now, as long as its cell names it. */
  readonly guard: (line: Pick<QuoteLine, 'hose' | 'guard'>, guard: string, length: string) => string;
}

/** The formulas of plain hoses; a rate that is missing makes the cost an error, as it does for assemblies. */
export function plainHoseCost(found: UsableCatalogue): PlainHoseCost {
  const { length, perLength } = found.catalogue.units;
  const divisor = perLength ? lengthRatio(length, perLength) : 1;
  const scrap = rateNumber(found, 'scrap fraction') ?? '0';
  const rate = (name: string) => rateNumber(found, name) ?? 'NA()';
  return {
    // CUTLENGTH reads lengths that are text (27 1/2), which a spreadsheet cannot multiply.
    hose: (hose, overall) =>
      `HOSE.CUTLENGTH(${overall},0,0)*HOSE.HOSEDATA(${found.reference},${hose},"price per length")/${divisor}/(1-${scrap})`,
    guard: ({ hose, guard }, cell, overall) => {
      const row = found.catalogue.index.hoses.get(partKey(hose))?.row;
      const price = row && guardPrice(found, guard, row);
      return price
        ? `IF(${cell}="",0,HOSE.CUTLENGTH(${overall},0,0)*${price.formula(cell)}/${price.divisor}/(1-${scrap}))`
        : `IF(${cell}="",0,NA())`;
    },
    labour: quantity => `(${rate('set-up minutes')}/${quantity}+${rate('minutes per cut')})*${rate('labour per hour')}/60`,
  };
}
