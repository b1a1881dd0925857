import type { Catalogue } from '../../core/catalogue/catalogue';
import { crimpOrReason } from '../../core/catalogue/crimpFor';
import { findFitting, findHose } from '../../core/catalogue/findPart';
import { partKey } from '../../core/catalogue/partName';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { cutLength } from '../../core/length/cutLength';
import { Decimal } from '../../core/units/decimal';
import type { GuardPrice } from '../catalogue/guardPrice';
import type { QuoteLine } from '../jobs/quoteLine';

/** Pieces of one job line. */
export interface HoseCut {
  readonly row: number;
  /** The line as a cut list names it: its number, else `row 12`. */
  readonly line: string;
  readonly length: Decimal;
  readonly quantity: number;
}

/** Pieces of one hose that have to be cut; lengths in the catalogue's unit. */
export interface HoseNeed {
  readonly hose: string;
  readonly cuts: readonly HoseCut[];
  readonly total: Decimal;
  /** Length of a new reel, where the catalogue gives it. */
  readonly reelLength: Decimal | undefined;
}

/** How many of a fitting or ferrule are needed. */
export interface PartNeed {
  readonly kind: 'Fitting' | 'Ferrule';
  readonly part: string;
  readonly count: number;
}

/** How much of a guard is needed, in the catalogue's unit of lengths. */
export interface GuardNeed {
  readonly guard: string;
  /** Where its price stands; undefined where the table Guards does not say which row it is. */
  readonly price: GuardPrice | undefined;
  readonly length: Decimal;
}

/** Everything that the lines need. */
export interface PurchaseNeeds {
  readonly hoses: readonly HoseNeed[];
  readonly parts: readonly PartNeed[];
  readonly guards: readonly GuardNeed[];
}

class Counted<T> {
  private readonly found = new Map<string, T>();

  add(key: string, first: T, add: (before: T) => T): void {
    const before = this.found.get(key);
    this.found.set(key, before === undefined ? first : add(before));
  }

  all(): readonly T[] {
    return [...this.found.values()];
  }
}

function cutOf(catalogue: Catalogue, { fittingA, fittingB, overall, cutLength: stated }: QuoteLine): Decimal {
  if (stated) return stated;
  const [cutOffA, cutOffB] = [fittingA, fittingB].map(
    name => new Decimal(name === '' ? 0 : findFitting(catalogue, name).cutOff),
  ) as [Decimal, Decimal];
  return cutLength({ overall, cutOffA, cutOffB });
}

/** Fittings and ferrules of a line, one entry an end. A line without crimp data is a STOP: none of those comes here. */
function partsOf(catalogue: Catalogue, { hose, fittingA, fittingB }: QuoteLine): readonly Omit<PartNeed, 'count'>[] {
  return [fittingA, fittingB]
    .filter(name => name !== '')
    .flatMap(name => {
      const match = crimpOrReason(catalogue, hose, name);
      const ferrule = typeof match === 'string' ? undefined : match.crimp.ferrule;
      const fitting = { kind: 'Fitting', part: findFitting(catalogue, name).fitting } as const;
      return ferrule === undefined ? [fitting] : [fitting, { kind: 'Ferrule', part: ferrule } as const];
    });
}

/**
 * What the lines need: pieces of hose, fittings, the ferrules that the crimp data name, and guards as long as the hose is cut.
 * @param priceOf the guard of that name for a hose
 */
export function purchaseNeeds(
  catalogue: Catalogue,
  lines: readonly QuoteLine[],
  priceOf: (guard: string, hose: Hose) => GuardPrice | undefined,
): PurchaseNeeds {
  const hoses = new Counted<HoseNeed>();
  const parts = new Counted<PartNeed>();
  const guards = new Counted<GuardNeed>();
  for (const line of lines) {
    const { row, quantity, guard } = line;
    const hose = findHose(catalogue, line.hose);
    const length = cutOf(catalogue, line);
    const cut = { row, line: line.line || `row ${row}`, length, quantity };
    const whole = length.times(quantity);
    const reelLength = hose.reelLength === undefined ? undefined : new Decimal(hose.reelLength);
    hoses.add(partKey(hose.hose), { hose: hose.hose, cuts: [cut], total: whole, reelLength }, before => ({
      ...before,
      cuts: [...before.cuts, cut],
      total: before.total.plus(whole),
    }));
    for (const part of partsOf(catalogue, line)) {
      const add = (before: PartNeed) => ({ ...before, count: before.count + quantity });
      parts.add(`${part.kind} ${partKey(part.part)}`, { ...part, count: quantity }, add);
    }
    if (guard === '') continue;
    const price = priceOf(guard, hose);
    const add = (before: GuardNeed) => ({ ...before, length: before.length.plus(whole) });
    guards.add(price ? price.formula('') : partKey(guard), { guard, price, length: whole }, add);
  }
  return { hoses: hoses.all(), parts: sorted(parts.all()), guards: guards.all() };
}

/** Fittings first, then ferrules, each in order of first appearance. */
function sorted(parts: readonly PartNeed[]): readonly PartNeed[] {
  return [...parts.filter(part => part.kind === 'Fitting'), ...parts.filter(part => part.kind === 'Ferrule')];
}
