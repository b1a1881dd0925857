import type { DialRange } from '../core/crimp/nextDial';
import { TradeError } from '../core/tradeError';
import { number } from '../cells/readers';
import { optionalSingle, type Cells } from '../cells/singles';

const readDigits = number({ marks: 'noLength', hint: 'enter a dial setting', like: '412' });
const readMove = number({ sign: 'positive', marks: 'noLength', hint: 'enter a number of digits', like: '20' });

/** The dial's lowest and highest setting and the largest move, each optional; refuses a range that is upside down. */
export function dialLimits(
  lowest: Cells,
  highest: Cells,
  largestMove: Cells,
): Pick<DialRange, 'lowest' | 'highest' | 'largestMove'> {
  const low = optionalSingle('lowest', lowest, readDigits);
  const high = optionalSingle('highest', highest, readDigits);
  if (low && high && low.gt(high))
    throw new TradeError('range', 'lowest', `is ${low}`, `it is above the highest setting ${high}`);
  return { lowest: low, highest: high, largestMove: optionalSingle('largest move', largestMove, readMove) };
}
