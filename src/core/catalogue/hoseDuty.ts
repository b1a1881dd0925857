import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { partKey } from './partName';
import { pressureAt } from './pressureAt';
import type { Hose } from './tables/hosesTable';

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

/** A hose against a duty. */
export interface HoseFit {
  readonly hose: Hose;
  /** Working pressure at the hottest temperature; undefined where it is not known. */
  readonly ratingAtHottest: Decimal | undefined;
  /** Why it does not suit; none where it does. A value that is missing is a reason. */
  readonly ruledOut: readonly string[];
}

/** Blanks and hyphens in a fluid's name do not matter: water-glycol, water glycol. */
const key = (text: string) => partKey(text).replace(/[\s\u002d\u2010-\u2015]+/g, ' ');

/** True where the list names the fluid, as an item of its own or in brackets behind one. */
export function fluidListed(fluids: string, fluid: string): boolean {
  const wanted = key(fluid);
  return key(fluids) === wanted || fluids.split(/[,;|/()\n]/).some(item => key(item) === wanted);
}

function limit(name: string, value: number | undefined, suits: (value: number) => boolean): string[] {
  if (value === undefined) return [`${name} not stated`];
  return suits(value) ? [] : [`${name} ${value}`];
}

function bendReasons(hose: Hose, tightest: Decimal | undefined): string[] {
  return tightest === undefined ? [] : limit('bend radius', hose.bendRadius, radius => tightest.gte(radius));
}

function vacuumReasons(hose: Hose, wanted: HoseDuty['vacuum']): string[] {
  if (wanted === undefined) return [];
  if (hose.vacuum === undefined) return ['vacuum not stated'];
  if (hose.vacuum === 'no' || hose.vacuum === 0) return ['no vacuum'];
  if (wanted === 'yes') return [];
  if (hose.vacuum === 'yes') return ['vacuum not stated as a pressure'];
  return wanted.abs().lte(hose.vacuum) ? [] : [`vacuum ${hose.vacuum}`];
}

function fluidReasons(hose: Hose, fluid: string | undefined): string[] {
  if (fluid === undefined) return [];
  if (hose.fluids === undefined) return ['fluids not stated'];
  return fluidListed(hose.fluids, fluid) ? [] : [`not for ${fluid}`];
}

function pressureReasons(hose: Hose, rating: Decimal | undefined, wanted: Decimal): string[] {
  if (rating === undefined) return ['working pressure at that temperature not stated'];
  if (rating.gte(wanted)) return [];
  return [rating.eq(hose.workingPressure) ? `working pressure ${rating}` : `working pressure ${rating} at that temperature`];
}

/** Judges one hose against a duty, demand by demand. */
export function hoseFit(catalogue: Catalogue, hose: Hose, duty: HoseDuty): HoseFit {
  const ratingAtHottest = pressureAt(catalogue, hose, duty.hottest);
  const ruledOut = [
    ...(duty.bore.lte(hose.bore) ? [] : [`bore ${hose.bore}`]),
    ...pressureReasons(hose, ratingAtHottest, duty.pressure),
    ...bendReasons(hose, duty.bendRadius),
    ...limit('coldest', hose.coldest, coldest => duty.coldest.gte(coldest)),
    ...limit('hottest', hose.hottest, hottest => duty.hottest.lte(hottest)),
    ...fluidReasons(hose, duty.fluid),
    ...vacuumReasons(hose, duty.vacuum),
  ];
  return { hose, ratingAtHottest, ruledOut };
}
