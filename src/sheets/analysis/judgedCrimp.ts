import type { CrimpVerdict } from '../../core/crimp/crimpVerdict';
import type { MeasuredCrimp } from '../crimps/crimpRow';

/** A crimp and what it is judged to be. */
export interface JudgedCrimp extends MeasuredCrimp {
  readonly verdict: CrimpVerdict;
}

/** Mean − target as a number. */
export const deviationOf = ({ measure }: JudgedCrimp): number => measure.deviation.toNumber();
