import { functionCalls } from '../../workbook/functionCall';

/** Which argument of a function of ours is the largest spread. */
const ARGUMENT: Readonly<Record<string, number>> = { CRIMPCHECK: 4, CRIMPDETAIL: 3 };

/** The largest spread that the formula of a verdict states as a number, by itself or for a blank cell; undefined where it states none. */
export function statedSpread(formula: string): number | undefined {
  for (const { id, arguments: given } of functionCalls(formula)) {
    const spread = given[ARGUMENT[id] ?? -1];
    const value = spread?.kind === 'constant' ? spread.cells[0]?.[0] : undefined;
    if (typeof value === 'number') return value;
    const [, number] = (spread?.kind === 'expression' && /,(\d+(?:\.\d+)?),/.exec(spread.text)) || [];
    if (number !== undefined) return Number(number);
  }
  return undefined;
}
