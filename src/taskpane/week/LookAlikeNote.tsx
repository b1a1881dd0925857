import { Checkbox, MessageBar, MessageBarBody } from '@fluentui/react-components';
import type { CutWishes, Gathered } from '../../sheets/cutlist/gatherCuts';
import { lookAlikeAnswers } from '../../sheets/cutlist/ownLines';

interface Props {
  readonly gathered: Gathered;
  /** Plans again with these wishes. */
  readonly onAgain: (wishes: CutWishes) => void;
}

/** Lines without order and assembly number that may be a new week's, though pieces of a line that looks the same are there already. */
export function LookAlikeNote({ gathered, onAgain }: Props) {
  const { lookAlike, report } = gathered;
  if (lookAlike.length === 0) return null;
  const rows = lookAlike.map(({ row }) => row);
  return (
    <MessageBar intent="warning" layout="multiline">
      <MessageBarBody>
        Left out of {report.sheet}: {rows.length === 1 ? 'row' : 'rows'} {rows.join(', ')}. Sheet Pieces has pieces with the same
        line, label and hose, and without an order or assembly number nothing tells a new week’s line from the old one. A column
        Order does.
        {lookAlikeAnswers(gathered).map(({ label, wishes }) => (
          <Checkbox key={label} label={label} checked={false} onChange={() => onAgain(wishes)} />
        ))}
      </MessageBarBody>
    </MessageBar>
  );
}
