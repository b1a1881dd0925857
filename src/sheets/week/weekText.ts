import type { OrderOfWork, SettingCounts, WorkGroup, WorkItem } from './orderOfWork';
import { countedText } from '../../core/countedText';
import { lineTitle } from '../jobs/benchCard';

const changesText = ({ dieChanges, dialChanges }: SettingCounts) =>
  `${countedText(dieChanges, 'die change')} and ${countedText(dialChanges, 'dial change')}`;

/** The overall result in one sentence. */
export function orderSentence({ groups, counts, inSheetOrder, isBest }: OrderOfWork): string {
  if (groups.length === 0) return 'Nothing to crimp in these lines.';
  const dies = new Set(groups.map(({ machine, die }) => `${machine} ${die}`.toLowerCase())).size;
  const best = isBest ? ' Fewer are not possible with these dials.' : '';
  return `${countedText(dies, 'die')}: ${changesText(counts)}; in the order of the sheet ${changesText(inSheetOrder)}.${best}`;
}

/** `Die D26, dial 300`. */
export const settingText = ({ die, dial }: WorkGroup): string => `Die ${die}, ${dial ? `dial ${dial}` : 'dial not known'}`;

/** `Line 4: Boom, end A, 3 off`. */
export function itemText({ line, ends }: WorkItem): string {
  const which = ends.length === 2 ? 'both ends' : line.ends.length === 1 ? 'one end' : `end ${ends[0]}`;
  return `${lineTitle(line)}, ${which}, ${line.quantity} off${line.due ? `, due ${line.due}` : ''}`;
}
