import type { OrderOfWork, SettingCounts, WorkGroup, WorkItem } from './orderOfWork';

const times = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

const countText = ({ dieChanges, dialChanges }: SettingCounts) =>
  `${times(dieChanges, 'die change', 'die changes')} and ${times(dialChanges, 'dial change', 'dial changes')}`;

/** The overall result in one sentence. */
export function orderSentence({ groups, counts, inSheetOrder, isBest }: OrderOfWork): string {
  if (groups.length === 0) return 'Nothing to crimp in these lines.';
  const dies = new Set(groups.map(({ machine, die }) => `${machine} ${die}`.toLowerCase())).size;
  const best = isBest ? ' Fewer are not possible with these dials.' : '';
  return `${times(dies, 'die', 'dies')}: ${countText(counts)}; in the order of the sheet ${countText(inSheetOrder)}.${best}`;
}

/** `Die D26, dial 300`. */
export const settingText = ({ die, dial }: WorkGroup): string => `Die ${die}, ${dial ? `dial ${dial}` : 'dial not known'}`;

/** `Line 4: Boom, end A, 3 off`. */
export function itemText({ line, ends }: WorkItem): string {
  const which = ends.length === 2 ? 'both ends' : line.ends.length === 1 ? 'one end' : `end ${ends[0]}`;
  const name = line.line.startsWith('row ') ? line.line.replace('row', 'Row') : `Line ${line.line}`;
  return `${name}${line.label ? `: ${line.label}` : ''}, ${which}, ${line.quantity} off${line.due ? `, due ${line.due}` : ''}`;
}
