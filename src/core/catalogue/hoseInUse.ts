import { shownText } from '../quotedText';
import { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { takesFluid } from './fluidRows';
import { partKey } from './partName';
import { pressureAt } from './pressureAt';
import { problemSentence } from './problem';
import type { Hose } from './tables/hosesTable';
import { temperatureLimits } from './temperatureLimits';

/** What an assembly is used with. */
export interface AssemblyUse {
  /** In the catalogue's unit of temperatures. */
  readonly temperature?: Decimal | undefined;
  readonly fluid?: string | undefined;
}

/** A hose in use. */
export interface HoseInUse {
  /** Derated at the temperature; undefined where it is not known, or where the hose may not be used so hot or cold. */
  readonly workingPressure: number | undefined;
  /** What is wrong; none where it may be used. */
  readonly wrong: readonly string[];
}

function fluidFault(catalogue: Catalogue, hose: Hose, fluid: string | undefined): string[] {
  const takes = fluid === undefined ? true : takesFluid(catalogue, hose, fluid);
  if (takes) return [];
  const why =
    takes === undefined
      ? `${shownText(hose.hose)} states none`
      : `${shownText(hose.hose)} is for ${hose.fluids}, not ${shownText(fluid!)}`;
  return [`fluid not the hose's: ${why}`];
}

function temperatureFaults(catalogue: Catalogue, hose: Hose, { temperature, fluid }: AssemblyUse): string[] {
  if (temperature === undefined) return [];
  const { coldest, hottest, problem } = temperatureLimits(catalogue, hose, fluid);
  const unit = catalogue.units.temperature ? ` ${catalogue.units.temperature.symbol}` : '';
  const sentence = (word: string, limit: { value: number; byFluid: boolean }, most: string) => {
    const withFluid = limit.byFluid && fluid !== undefined ? ` with ${shownText(fluid)}` : '';
    return `${word} than ${shownText(hose.hose)} allows${withFluid}: ${temperature}${unit}, ${most} ${limit.value}${unit}`;
  };
  return [
    ...(hottest && temperature.gt(hottest.value) ? [sentence('hotter', hottest, 'at most')] : []),
    ...(coldest && temperature.lt(coldest.value) ? [sentence('colder', coldest, 'at least')] : []),
    ...(problem ? [`temperature limits of ${shownText(fluid!)} not known: ${problemSentence(problem)}`] : []),
  ];
}

/** Why a hose has no rating at a temperature that it may be used at; undefined where it has one. */
function ratingFault(catalogue: Catalogue, hose: Hose, temperature: Decimal, rating: Decimal | undefined): string | undefined {
  const unit = catalogue.units.temperature ? ` ${catalogue.units.temperature.symbol}` : '';
  const at = `rating missing: ${shownText(hose.hose)} at ${temperature}${unit}`;
  const rows = catalogue.index.derating.get(partKey(hose.hose));
  if (rating !== undefined) return rows || hose.hottest !== undefined ? undefined : `${at} (its Hottest is blank)`;
  const problem = rows?.find(entry => entry.problem)?.problem;
  if (problem) return `${at} (${problemSentence(problem)})`;
  return `${at} (Derating ends at ${rows!.at(-1)!.row!.temperature}${unit})`;
}

/**
 * A hose at a temperature with a fluid: its rating by the table Derating, its limits by its own range and the table Fluids. Without a
 * temperature its full rating counts; without a fluid none is checked.
 */
export function hoseInUse(catalogue: Catalogue, hose: Hose, use: AssemblyUse): HoseInUse {
  const { temperature, fluid } = use;
  const wrongFluid = fluidFault(catalogue, hose, fluid);
  if (temperature === undefined) return { workingPressure: hose.workingPressure, wrong: wrongFluid };
  const outside = temperatureFaults(catalogue, hose, use);
  const rating = pressureAt(catalogue, hose, temperature);
  const missing = ratingFault(catalogue, hose, temperature, rating);
  return {
    workingPressure: outside.length > 0 || missing !== undefined ? undefined : rating!.toNumber(),
    wrong: [...wrongFluid, ...outside, ...(missing === undefined ? [] : [missing])],
  };
}
