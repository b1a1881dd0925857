import type { Catalogue } from '../../core/catalogue/catalogue';
import { coupledHose, type CoupledEnd } from '../../core/catalogue/coupledHose';
import { crimpOrReason } from '../../core/catalogue/crimpFor';
import { findFittings, hasEndForm } from '../../core/catalogue/findFittings';
import { familiesMatch, isFerrule, sizesMatch } from '../../core/catalogue/partsMatch';
import type { Fitting } from '../../core/catalogue/tables/fittingsTable';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { converted, UNITS_OF } from './dutyUnits';
import { peakPressure } from './hoseMargins';
import { numberMargin, RATED, reasonText, rulesOut, type Margin } from './margin';
import type { Demand, EndDemand } from './readDuty';

/** A fitting that suits one end of a hose. */
export interface EndOption {
  readonly fitting: Fitting;
  readonly pressure: Margin;
  /** How deep the hose goes into it, in the catalogue's unit; undefined = not known. */
  readonly insertionDepth: number | undefined;
  /** With its ferrule; undefined = not known. */
  readonly price: number | undefined;
}

/** A fitting that does not suit an end, and why. */
export interface RuledOutFitting {
  readonly fitting: string;
  readonly reason: string;
}

/** Fittings for one end, cheapest first, and why others are not among them. */
export interface EndOptions {
  readonly suitable: readonly EndOption[];
  /** Those of the end form and angle that do not suit; without any such fitting, that. */
  readonly ruledOut: readonly string[];
}

function priceOf({ fitting, ferrule }: CoupledEnd): number | undefined {
  if (fitting.price === undefined || (ferrule && ferrule.price === undefined)) return undefined;
  return fitting.price + (ferrule?.price ?? 0);
}

function mismatch(hose: Hose, fitting: Fitting): string | undefined {
  if (!familiesMatch(hose, fitting)) return `${fitting.fitting}: its family is ${fitting.family}, the hose's ${hose.family}`;
  if (!sizesMatch(hose, fitting)) return `${fitting.fitting}: its size is not the hose's`;
  return undefined;
}

/** Pressure of a fitting against the demand; fittings have no derating of their own in the catalogue. */
function fittingMargin(catalogue: Catalogue, fitting: Fitting, demand: Demand): Margin {
  const unit = UNITS_OF[demand.units].pressure;
  const rating = fitting.workingPressure === undefined ? undefined : new Decimal(fitting.workingPressure);
  const has = converted(rating, catalogue.units.pressure, unit);
  return numberMargin(`Pressure of ${fitting.fitting}`, peakPressure(demand), has, unit, { percent: true, words: RATED });
}

/** Why a fitting that could be put on the hose is not the one that is asked for; undefined where it is. */
function notAskedFor(fitting: Fitting, { form, angle }: EndDemand): string | undefined {
  if (form !== undefined && !hasEndForm(fitting, form))
    return [`end form ${fitting.endForm}`, fitting.series].filter(Boolean).join(' ');
  if (angle === undefined || angle.eq(fitting.angle ?? NaN)) return undefined;
  return fitting.angle === undefined ? 'angle not known' : `angle ${fitting.angle}°`;
}

/** Every fitting of the hose's family and size, and every one with crimp data for it, that does not suit an end; each with its reason. */
export function ruledOutFittings(
  catalogue: Catalogue,
  hose: Hose,
  end: EndDemand,
  demand: Demand,
  suitable: readonly EndOption[],
): readonly RuledOutFitting[] {
  const taken = new Set(suitable.map(({ fitting }) => fitting.fitting));
  return catalogue.fittings.flatMap(fitting => {
    if (isFerrule(fitting) || taken.has(fitting.fitting)) return [];
    const crimp = crimpOrReason(catalogue, hose.hose, fitting.fitting);
    const wrong = mismatch(hose, fitting);
    if (wrong && typeof crimp === 'string') return [];
    const pressure = fittingMargin(catalogue, fitting, demand);
    const reason =
      notAskedFor(fitting, end) ??
      wrong ??
      (typeof crimp === 'string' ? crimp : undefined) ??
      `${pressure.facts}${pressure.state === 'missed' ? `, ${pressure.verdict}` : ''}`;
    return [{ fitting: fitting.fitting, reason }];
  });
}

/** Fittings of an end form and angle that have crimp data for a hose; without an end form any that is no ferrule. */
function fittingsFor(catalogue: Catalogue, hose: Hose, { form, angle }: EndDemand): readonly Fitting[] {
  if (form !== undefined) return findFittings(catalogue, hose.hose, form, angle);
  const found = catalogue.fittings.filter(
    fitting =>
      !isFerrule(fitting) &&
      (angle === undefined || angle.eq(fitting.angle ?? NaN)) &&
      typeof crimpOrReason(catalogue, hose.hose, fitting.fitting) !== 'string',
  );
  if (found.length > 0) return found;
  const of = angle === undefined ? 'coupling' : `coupling of ${angle}°`;
  throw new TradeError('notFound', '', `no ${of} has crimp data for ${hose.hose}`, 'add it to the table Crimps');
}

/** Which fittings of the end form and angle suit a hose. */
export function endOptions(catalogue: Catalogue, hose: Hose, end: EndDemand, demand: Demand): EndOptions {
  let fittings: readonly Fitting[];
  try {
    fittings = fittingsFor(catalogue, hose, end);
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { suitable: [], ruledOut: [error.received] };
  }
  const suitable: EndOption[] = [];
  const ruledOut: string[] = [];
  for (const fitting of fittings) {
    const pressure = fittingMargin(catalogue, fitting, demand);
    const wrong = mismatch(hose, fitting) ?? (rulesOut(pressure) ? reasonText(pressure) : undefined);
    if (wrong !== undefined) ruledOut.push(wrong);
    else {
      const [coupled] = coupledHose(catalogue, hose.hose, [fitting.fitting, fitting.fitting]).ends;
      suitable.push({ fitting, pressure, insertionDepth: coupled.insertionDepth, price: priceOf(coupled) });
    }
  }
  return { suitable: suitable.sort((a, b) => (a.price ?? Infinity) - (b.price ?? Infinity) || 0), ruledOut };
}
