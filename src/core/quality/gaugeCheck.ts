import { TradeError } from '../tradeError';
import { Decimal, squareOf } from '../units/decimal';

const LEAST_READINGS = 10;
const SHARE_OF_TOLERANCE = '0.2';
const SHARE_OF_BIAS = '0.1';
const SIGMAS = 6;

/** What a gauge makes of one reference piece. */
export interface GaugeCheck {
  /** Mean of the readings − reference. */
  readonly bias: Decimal;
  /** Standard deviation of the readings. */
  readonly s: Decimal;
  /** 0.2 of the tolerance in 6 standard deviations. */
  readonly cg: Decimal;
  /** As cg, with the bias taken off. */
  readonly cgk: Decimal;
}

/**
 * Gauge check on a reference piece: bias, standard deviation s, Cg = 0.2·T ÷ 6s and Cgk = (0.1·T − |bias|) ÷ 3s.
 * @param readings ten or more of the same piece, by the same person
 * @param reference its known size, in the unit of the readings
 * @param tolerance full width T of the tolerance that the gauge is to judge
 * @throws TradeError `shape` with fewer than ten readings; `impossible` where they do not differ
 * Source: form of ISO 22514-7, from memory.
 * @example T 0.24, s 0.012, bias 0.006: Cg 0.6667, Cgk 0.5
 */
export function gaugeCheck(readings: readonly Decimal[], reference: Decimal, tolerance: Decimal): GaugeCheck {
  const count = readings.length;
  if (count < LEAST_READINGS) {
    throw new TradeError('shape', 'readings', `came as ${count}`, 'take ten or more of the same reference piece');
  }
  const mean = Decimal.sum(...readings).div(count);
  const bias = mean.minus(reference);
  const s = Decimal.sum(...readings.map(reading => squareOf(reading.minus(mean))))
    .div(count - 1)
    .sqrt();
  if (s.isZero()) {
    throw new TradeError(
      'impossible',
      'readings',
      'show no scatter',
      'read the gauge to a finer digit, and lift it off each time',
    );
  }
  return {
    bias,
    s,
    cg: tolerance.times(SHARE_OF_TOLERANCE).div(s.times(SIGMAS)),
    cgk: tolerance
      .times(SHARE_OF_BIAS)
      .minus(bias.abs())
      .div(s.times(SIGMAS / 2)),
  };
}
