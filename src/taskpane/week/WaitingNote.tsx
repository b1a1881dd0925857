import { Checkbox, MessageBar, MessageBarBody } from '@fluentui/react-components';
import type { Gathered } from '../../sheets/cutlist/gatherCuts';

/** More names than these are folded away. */
const SHOWN = 6;

interface Props {
  readonly gathered: Gathered;
  /** Plans again, with or without the pieces that wait. */
  readonly onLeave: (leavesWaiting: boolean) => void;
}

/** A successor's note has its number; another note follows the number. */
const named = (waits: string, note?: string) => (!note ? waits : note.startsWith(`${waits} `) ? note : `${waits} (${note})`);

/** Pieces that wait for a plan, successors of scrapped ones among them: they are cut with this one unless somebody says no. */
export function WaitingNote({ gathered: { waiting, wishes }, onLeave }: Props) {
  const { lines, problems } = waiting;
  if (lines.length + problems.length === 0) return null;
  const names = lines.map(({ waits, note }) => named(waits, note)).join('; ');
  const isLong = lines.length > SHOWN;
  const count = `${lines.length} ${lines.length === 1 ? 'piece waits' : 'pieces wait'} on sheet Pieces`;
  return (
    <MessageBar intent="info" layout="multiline">
      <MessageBarBody>
        {lines.length > 0 && (isLong ? `${count}.` : `${count}: ${names}.`)}{' '}
        {problems.map(({ row, sentence: why }) => `Row ${row}: ${why}.`).join(' ')}
        {isLong && (
          <details>
            <summary>Which pieces</summary>
            {names}
          </details>
        )}
        {lines.length > 0 && (
          <Checkbox
            label="Cut them with this plan"
            checked={!wishes.leavesWaiting}
            onChange={(_, { checked }) => onLeave(checked !== true)}
          />
        )}
      </MessageBarBody>
    </MessageBar>
  );
}
