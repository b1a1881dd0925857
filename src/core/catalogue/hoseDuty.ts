import { shownText } from '../quotedText';
import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { takesFluid } from './fluidRows';
import { pressureAt } from './pressureAt';
import type { Hose } from './tables/hosesTable';
import { temperatureLimits } from './temperatureLimits';

/** What a hose has to do. Values are in the catalogue's units. */
export interface HoseDuty {
  /** Smallest bore that will do. */
  readonly bore: Decimal;
  readonly pressure: Decimal;
  /** Tightest bend of the route; undefined where it has none. */
  readonly bendRadius?: Decimal | undefined;
  readonly coldest: Decimal;
  readonly hottest: Decimal;
  readonly fluid?: string | undefined;
  /** Vacuum it must stand (its sign does not matter), or just that it must stand one. */
  readonly vacuum?: Decimal | 'yes' | undefined;
}

/** Why a hose does not suit: the demand that it misses, worded alike for all hoses, and what this one has. */
interface Reason {
  readonly demand: string;
  readonly text: string;
}

/** A hose against a duty. */
export interface HoseFit {
  readonly hose: Hose;
  /** Working pressure at the hottest temperature; undefined where it is not known. */
  readonly ratingAtHottest: Decimal | undefined;
  /** Why it does not suit; none where it does. A value that is missing is a reason. */
  readonly ruledOut: readonly string[];
  /** The demands that it misses, in words that are the same for every hose. */
  readonly missed: readonly string[];
}

const same = (text: string): Reason => ({ demand: text, text });

function boreReasons({ bore }: Hose, wanted: Decimal): Reason[] {
  return wanted.lte(bore) ? [] : [{ demand: `bore below ${wanted}`, text: `bore ${bore}` }];
}

function bendReasons({ bendRadius }: Hose, tightest: Decimal | undefined): Reason[] {
  if (tightest === undefined) return [];
  if (bendRadius === undefined) return [same('bend radius not stated')];
  return tightest.gte(bendRadius) ? [] : [{ demand: `bend radius above ${tightest}`, text: `bend radius ${bendRadius}` }];
}

function vacuumReasons(hose: Hose, wanted: HoseDuty['vacuum']): Reason[] {
  if (wanted === undefined) return [];
  if (hose.vacuum === undefined) return [same('vacuum not stated')];
  if (hose.vacuum === 'no' || hose.vacuum === 0) return [same('no vacuum')];
  if (wanted === 'yes') return [];
  if (hose.vacuum === 'yes') return [same('vacuum not stated as a pressure')];
  return wanted.abs().lte(hose.vacuum) ? [] : [{ demand: `vacuum below ${wanted.abs()}`, text: `vacuum ${hose.vacuum}` }];
}

function fluidReasons(catalogue: Catalogue, hose: Hose, fluid: string | undefined): Reason[] {
  if (fluid === undefined) return [];
  const takes = takesFluid(catalogue, hose, fluid);
  if (takes === undefined) return [same('fluids not stated')];
  return takes ? [] : [same(`not for ${shownText(fluid)}`)];
}

function temperatureReasons(catalogue: Catalogue, hose: Hose, { coldest, hottest, fluid }: HoseDuty): Reason[] {
  const limits = temperatureLimits(catalogue, hose, fluid);
  const reasons = (name: 'coldest' | 'hottest', wanted: Decimal, suits: (limit: number) => boolean, side: string): Reason[] => {
    const limit = limits[name];
    // A fluid's range says nothing of a hose whose own is not stated.
    if (hose[name] === undefined || !limit) return [same(`${name} not stated`)];
    if (suits(limit.value)) return [];
    const withFluid = limit.byFluid ? ` with ${shownText(fluid!)}` : '';
    return [{ demand: `${name}${withFluid} ${side} ${wanted}`, text: `${name}${withFluid} ${limit.value}` }];
  };
  return [
    ...reasons('coldest', coldest, limit => coldest.gte(limit), 'above'),
    ...reasons('hottest', hottest, limit => hottest.lte(limit), 'below'),
    ...(limits.problem ? [same(`temperature limits of ${shownText(fluid!)} not known`)] : []),
  ];
}

function pressureReasons(hose: Hose, rating: Decimal | undefined, wanted: Decimal): Reason[] {
  if (rating === undefined) return [same('working pressure at that temperature not stated')];
  if (rating.gte(wanted)) return [];
  const derated = rating.eq(hose.workingPressure) ? '' : ' at that temperature';
  return [{ demand: `working pressure below ${wanted}`, text: `working pressure ${rating}${derated}` }];
}

/** Judges one hose against a duty, demand by demand. */
export function hoseFit(catalogue: Catalogue, hose: Hose, duty: HoseDuty): HoseFit {
  const ratingAtHottest = pressureAt(catalogue, hose, duty.hottest);
  const reasons = [
    ...boreReasons(hose, duty.bore),
    ...pressureReasons(hose, ratingAtHottest, duty.pressure),
    ...bendReasons(hose, duty.bendRadius),
    ...temperatureReasons(catalogue, hose, duty),
    ...fluidReasons(catalogue, hose, duty.fluid),
    ...vacuumReasons(hose, duty.vacuum),
  ];
  return { hose, ratingAtHottest, ruledOut: reasons.map(({ text }) => text), missed: reasons.map(({ demand }) => demand) };
}
