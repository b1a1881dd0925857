import type { Catalogue } from '../../core/catalogue/catalogue';
import { crimpOrReason } from '../../core/catalogue/crimpFor';
import { findFitting, findHose } from '../../core/catalogue/findPart';
import { partKey } from '../../core/catalogue/partName';
import { cutLength } from '../../core/length/cutLength';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { RowProblem } from '../table/rowProblem';
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
  /** Size of the hoses it goes over, where the guard's name alone does not say which it is. */
  readonly size: string | undefined;
  readonly length: Decimal;
}

/** Everything that the lines need. */
export interface PurchaseNeeds {
  readonly hoses: readonly HoseNeed[];
  readonly parts: readonly PartNeed[];
  readonly guards: readonly GuardNeed[];
  /** Lines left out, and lines whose ferrules are not known. */
  readonly problems: readonly RowProblem[];
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

function lineName({ cells, row }: QuoteLine): string {
  const name = typeof cells.line === 'object' ? '' : String(cells.line).trim();
  return name || `row ${row}`;
}

function cutOf(catalogue: Catalogue, line: QuoteLine): Decimal {
  const [a, b] = [findFitting(catalogue, line.fittingA), findFitting(catalogue, line.fittingB)];
  if (line.cutLength) return line.cutLength;
  return cutLength({ overall: line.overall, cutOffA: new Decimal(a.cutOff), cutOffB: new Decimal(b.cutOff) });
}

/** Fittings and ferrules of a line, one entry an end. */
function partsOf(catalogue: Catalogue, { hose, fittingA, fittingB }: QuoteLine): { parts: PartNeed[]; reasons: string[] } {
  const parts: PartNeed[] = [];
  const reasons: string[] = [];
  for (const name of [fittingA, fittingB]) {
    parts.push({ kind: 'Fitting', part: findFitting(catalogue, name).fitting, count: 1 });
    const match = crimpOrReason(catalogue, hose, name);
    if (typeof match === 'string') reasons.push(match);
    else if (match.crimp.ferrule !== undefined) parts.push({ kind: 'Ferrule', part: match.crimp.ferrule, count: 1 });
  }
  return { parts, reasons: [...new Set(reasons)] };
}

/**
 * What the lines need: pieces of hose, fittings, the ferrules that the crimp data name, and guards over the overall length.
 * @param needsSize whether a guard's name alone does not say which row of Guards it is
 */
export function purchaseNeeds(
  catalogue: Catalogue,
  lines: readonly QuoteLine[],
  needsSize: (guard: string) => boolean,
): PurchaseNeeds {
  const hoses = new Counted<HoseNeed>();
  const parts = new Counted<PartNeed>();
  const guards = new Counted<GuardNeed>();
  const problems: RowProblem[] = [];
  for (const line of lines) {
    try {
      const { row, quantity, guard } = line;
      const hose = findHose(catalogue, line.hose);
      const length = cutOf(catalogue, line);
      const found = partsOf(catalogue, line);
      const cut = { row, line: lineName(line), length, quantity };
      const whole = length.times(quantity);
      hoses.add(partKey(hose.hose), { hose: hose.hose, cuts: [cut], total: whole }, before => ({
        ...before,
        cuts: [...before.cuts, cut],
        total: before.total.plus(whole),
      }));
      for (const part of found.parts) {
        const add = (before: PartNeed) => ({ ...before, count: before.count + quantity });
        parts.add(`${part.kind} ${partKey(part.part)}`, { ...part, count: quantity }, add);
      }
      if (guard !== '') {
        const size = needsSize(guard) ? hose.size : undefined;
        const over = line.overall.times(quantity);
        const add = (before: GuardNeed) => ({ ...before, length: before.length.plus(over) });
        guards.add(`${partKey(guard)} ${size ?? ''}`, { guard, size, length: over }, add);
      }
      if (found.reasons.length > 0) problems.push({ row, sentence: `ferrules not known: ${found.reasons.join('; ')}` });
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      problems.push({ row: line.row, sentence: `left out: ${error.message}` });
    }
  }
  return { hoses: hoses.all(), parts: sorted(parts.all()), guards: guards.all(), problems };
}

/** Fittings first, then ferrules, each in order of first appearance. */
function sorted(parts: readonly PartNeed[]): readonly PartNeed[] {
  return [...parts.filter(part => part.kind === 'Fitting'), ...parts.filter(part => part.kind === 'Ferrule')];
}
