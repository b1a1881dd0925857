import { Checkbox, MessageBar, MessageBarBody } from '@fluentui/react-components';
import type { CutWishes, Gathered } from '../../sheets/cutlist/gatherCuts';
import { othersLookAlike } from '../../sheets/cutlist/ownLines';
import type { Takeable } from '../../sheets/table/tableRows';

interface Props {
  readonly gathered: Gathered;
  /** Lines whose pieces were written from here: see `plannedLines`. */
  readonly own: ReadonlySet<string>;
  /** Plans again with these wishes. */
  readonly onAgain: (wishes: CutWishes) => void;
}

const TICKS = {
  done: 'This is new work: cut these lines, too',
  planned: 'Plan these lines anew, with the piece numbers they have',
} as const;
const REASONS = ['done', 'planned'] as const;

/** Lines without order and assembly number that may be a new week's, though pieces of a line that looks the same are there already. */
export function LookAlikeNote({ gathered, own, onAgain }: Props) {
  const { wishes, report } = gathered;
  const lookAlike = othersLookAlike(gathered, own);
  if (lookAlike.length === 0) return null;
  const rows = lookAlike.map(({ row }) => row);
  const take = (reason: Takeable) => onAgain({ ...wishes, take: new Set([...(wishes.take ?? []), reason]) });
  return (
    <MessageBar intent="warning" layout="multiline">
      <MessageBarBody>
        Left out of {report.sheet}: {rows.length === 1 ? 'row' : 'rows'} {rows.join(', ')}. Sheet Pieces has pieces with the same
        line, label and hose, and without an order or assembly number nothing tells a new week’s line from the old one. A column
        Order does.
        {REASONS.filter(reason => lookAlike.some(row => row.reason === reason)).map(reason => (
          <Checkbox key={reason} label={TICKS[reason]} checked={false} onChange={() => take(reason)} />
        ))}
      </MessageBarBody>
    </MessageBar>
  );
}
