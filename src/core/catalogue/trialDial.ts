import { tQuantile } from '../quality/tQuantile';
import { shownText } from '../quotedText';
import { TradeError } from '../tradeError';
import { Decimal, squareOf } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { catalogueDialsHold } from './catalogueDials';
import { crimpFor, crimpOfRecord } from './crimpFor';
import { machineDescription, machineDial } from './machineDial';
import { machineRecords } from './machineRecords';
import { partKey } from './partName';
import { remembered } from './remembered';
import type { Crimp } from './tables/crimpsTable';

const CONFIDENCE = 0.95;

/** A dial to try on one trial piece. */
export interface TrialDial {
  /** To the nearest digit; half a digit away from 0. */
  readonly dial: Decimal;
  /** Where the next crimp's right dial lies with 95 %; undefined with fewer than two records. */
  readonly low: number | undefined;
  readonly high: number | undefined;
  /** Records it rests on. */
  readonly records: number;
  /** The machine's own record; the catalogue's dial and how the machine's records differ from it; its records with the same die. */
  readonly basis: 'RECORD' | 'CATALOGUE' | 'SAME DIE';
}

type Estimate = Omit<TrialDial, 'basis'>;

/** Mean of the dials and its interval for one more: t with n − 1, s·√(1 + 1/n). */
function estimate(dials: readonly Decimal[]): Estimate {
  const count = dials.length;
  const mean = Decimal.sum(...dials).div(count);
  const dial = mean.toDecimalPlaces(0, Decimal.ROUND_HALF_UP);
  if (count < 2) return { dial, low: undefined, high: undefined, records: count };
  const squares = Decimal.sum(...dials.map(each => squareOf(each.minus(mean))));
  const spread = squares
    .div(count - 1)
    .times(1 + 1 / count)
    .sqrt();
  const half = spread.times(tQuantile((1 + CONFIDENCE) / 2, count - 1));
  return { dial, low: mean.minus(half).toNumber(), high: mean.plus(half).toNumber(), records: count };
}

/** The catalogue's dial, moved by what the machine's records of other pairs differ from theirs. */
function fromCatalogue(catalogue: Catalogue, machine: string, crimp: Crimp): Estimate {
  const dials = machineRecords(catalogue, machine).flatMap(record => {
    const theirs = crimpOfRecord(catalogue, record.hose, record.fitting);
    if (!theirs || partKey(theirs.die) !== partKey(record.die)) return [];
    return [new Decimal(record.dial).minus(theirs.dial).plus(crimp.dial)];
  });
  if (dials.length > 0) return estimate(dials);
  return { ...estimate([new Decimal(crimp.dial)]), records: 0 };
}

/** The dials of other pairs with the same die, moved by how much smaller or larger this one is crimped; undefined without any. */
function fromSameDie(catalogue: Catalogue, machine: string, crimp: Crimp): Estimate | undefined {
  const step = machineDescription(catalogue, machine, crimp.die)?.step;
  if (step === undefined) return undefined;
  const dials = machineRecords(catalogue, machine).flatMap(record => {
    const theirs = partKey(record.die) === partKey(crimp.die) ? crimpOfRecord(catalogue, record.hose, record.fitting) : undefined;
    if (!theirs) return [];
    return [new Decimal(theirs.crimpDiameter).minus(crimp.crimpDiameter).div(step).plus(record.dial)];
  });
  return dials.length > 0 ? estimate(dials) : undefined;
}

function requireOnScale(catalogue: Catalogue, machine: string, die: string, dial: Decimal): void {
  const { lowest, highest } = machineDescription(catalogue, machine, die) ?? {};
  const look = 'it is not on the machine’s scale: look at die, hose and fitting, and at the records of this machine, first';
  if (lowest !== undefined && dial.lt(lowest)) throw new TradeError('range', 'dial', `would be ${dial}, below ${lowest}`, look);
  if (highest !== undefined && dial.gt(highest))
    throw new TradeError('range', 'dial', `would be ${dial}, above ${highest}`, look);
}

function work(catalogue: Catalogue, hose: string, fitting: string, machine: string): TrialDial {
  const { crimp } = crimpFor(catalogue, hose, fitting);
  const own = machineDial(catalogue, machine, crimp.die, hose, fitting)?.dial;
  if (own !== undefined) return { ...estimate([new Decimal(own)]), basis: 'RECORD' };
  const holds = catalogueDialsHold(catalogue, machine);
  const found = holds ? fromCatalogue(catalogue, machine, crimp) : fromSameDie(catalogue, machine, crimp);
  if (!found) {
    const received = `nothing to go by for ${shownText(hose)} with ${shownText(fitting)} on ${shownText(machine)}`;
    const advice = `it has no record with die ${crimp.die} and a step, and the catalogue’s dials are not for it`;
    throw new TradeError('notFound', '', received, advice);
  }
  requireOnScale(catalogue, machine, crimp.die, found.dial);
  return { ...found, basis: holds ? 'CATALOGUE' : 'SAME DIE' };
}

const known = remembered<TrialDial>();

/**
 * A dial to try on ONE trial piece of a hose with a fitting, before a batch: the machine's own record; else, where the catalogue's dials hold
 * for it, the catalogue's dial and the mean difference of its records from theirs; else the mean of its records with that die, by crimp
 * diameter and step. Only the newest record of each pair and die counts.
 * @throws TradeError `notApproved` without crimp data; `notFound` with nothing to go by; `range` outside the machine's scale
 * Source: Student's t; interval for one more value, mean ± t·s·√(1 + 1/n).
 * @example catalogue dial 413, records 2, 3 and 3 digits above theirs: 416, from 412.80 to 418.54
 */
export function trialDial(catalogue: Catalogue, hose: string, fitting: string, machine: string): TrialDial {
  return known(catalogue, [hose, fitting, machine].join('\u001f'), () => work(catalogue, hose, fitting, machine));
}
