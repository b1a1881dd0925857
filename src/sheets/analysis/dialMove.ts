import { nextDial } from '../../core/crimp/nextDial';
import { dialResponse, type DialResponse } from '../../core/quality/dialResponse';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { gatherBy, type CombinationReadings, type MachineReadings } from './analyseReadings';
import type { Sourced } from '../crimps/crimpRow';

/** What to do with the dial of a combination whose own setting is off. */
export type DialMove =
  | { readonly from: Decimal; readonly to: Decimal; readonly step: Sourced }
  | { readonly from: Decimal | undefined; readonly refusal?: string };

const responses = new WeakMap<MachineReadings['crimps'], { readonly response: DialResponse | undefined }>();

/** How the machine’s dial acts on the diameter, as its own crimps show it; undefined where no combination was crimped at two settings. */
export function responseOf({ crimps }: Pick<MachineReadings, 'crimps'>): DialResponse | undefined {
  const known = responses.get(crimps) ?? { response: responseAsShown(crimps) };
  responses.set(crimps, known);
  return known.response;
}

function responseAsShown(crimps: MachineReadings['crimps']): DialResponse | undefined {
  const dialled = crimps.filter(({ dial }) => dial !== undefined);
  const groups = gatherBy(dialled, ({ combination, die }) => `${combination}\u0000${die}`);
  const levels = groups.map(({ items }) =>
    items.map(({ dial, measure }) => ({ dial: dial!.toNumber(), mean: measure.mean.toNumber() })),
  );
  try {
    return dialResponse(levels);
  } catch (error) {
    if (error instanceof TradeError) return undefined;
    throw error;
  }
}

/** The step that the crimps themselves show, where it is clearly not 0. */
function measuredStep(machine: MachineReadings): Sourced | undefined {
  const response = responseOf(machine);
  if (!response || response.low === undefined || response.high === undefined) return undefined;
  if (response.low <= 0 && response.high >= 0) return undefined;
  return { value: new Decimal(response.perDigit).toSignificantDigits(3), from: 'as these crimps show' };
}

/** The dial that takes out a combination’s own deviation: what it is off beyond machine and die. */
export function dialMove(machine: MachineReadings, { counted, cause }: CombinationReadings): DialMove {
  const from = [...counted].reverse().find(({ dial }) => dial !== undefined)?.dial;
  const facts = machine.facts(counted.at(-1)?.die ?? '');
  const step = facts.step ?? measuredStep(machine);
  if (!from || !step) return { from };
  const own = cause.correction.negated();
  const measure = { count: 1, mean: own, deviation: own, deviationSum: own, spread: new Decimal(0) };
  const { lowest, highest, largestMove } = facts;
  try {
    // Tolerance 0: it has been decided already that this one is to be moved.
    const to = nextDial(measure, new Decimal(0), { dial: from, step: step.value, lowest, highest, largestMove });
    return { from, to, step };
  } catch (error) {
    if (error instanceof TradeError) return { from, refusal: error.message };
    throw error;
  }
}
