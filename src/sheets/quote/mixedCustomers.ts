import { partKey } from '../../core/catalogue/partName';
import { isReady, type JobLine } from '../jobs/jobLine';

/** So many are named. */
const MOST = 6;

/** Where the lines of one quote are for several customers: a sentence with their names. */
export function mixedCustomers(lines: readonly JobLine[]): readonly string[] {
  const names = new Map<string, string>();
  for (const line of lines) {
    const { customer } = line;
    if (!isReady(line) || line.quantity === 0 || customer === '') continue;
    if (!names.has(partKey(customer))) names.set(partKey(customer), customer);
  }
  if (names.size < 2) return [];
  const more = names.size > MOST ? ` and ${names.size - MOST} more` : '';
  const named = [...names.values()].slice(0, MOST).join(', ');
  return [
    `These lines are for ${names.size} customers: ${named}${more}. Select the lines of one of them for a quote of their own.`,
  ];
}
