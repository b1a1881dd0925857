import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import { readPieces } from '../pieces/readPieces';
import type { BenchCard } from './benchCard';
import { benchCards } from './benchCards';
import { readJobs, type Jobs, type JobWishes } from './readJobs';
import type { JobChoice } from './jobChoice';

/** Cards of the selected lines and where their data come from. */
export interface GatheredCards {
  readonly jobs: Jobs;
  readonly cards: readonly BenchCard[];
  /** Sheet, and the handle of the catalogue where one is loaded. */
  readonly source: string;
}

/** What the user says about the reading of cards. */
export interface CardWishes extends Pick<JobWishes, 'take' | 'plainEnds' | 'whateverStatus'> {
  /** Unit of `step`, and of a card whose line has no length that can be read. */
  readonly unit: LengthUnit;
  /** What the bench can cut. */
  readonly step: Decimal;
  /** Unit of pressures where a heading names none. */
  readonly pressureUnit: string;
  /** Crimper of the lines that name none: its own recorded dials win; "" = none. */
  readonly machine: string;
}

/**
 * Reads the selected job lines as bench cards, with the set-ups of the workbook's catalogue where there is one.
 * @param choice rows that are meant; the selection where left out
 * @throws NoJobs with a sentence where the selection is in no job table
 */
export async function gatherCards(workbook: Workbook, wishes: CardWishes, choice?: JobChoice): Promise<GatheredCards> {
  const { unit, machine, pressureUnit, ...rest } = wishes;
  const step = { value: wishes.step, unit: measureUnit('length', unit)! };
  const jobs = await readJobs(workbook, { ...rest, step, pressureUnit: measureUnit('pressure', pressureUnit) }, choice);
  const source = [`sheet ${jobs.choice.sheet}`, jobs.catalogue?.handle].filter(Boolean).join(', ');
  const pieces = (await readPieces(workbook))?.pieces;
  return { jobs, cards: benchCards(jobs, { unit, step, machine }, pieces), source };
}
