import {
  Body1Strong,
  Button,
  Link,
  makeStyles,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  tokens,
} from '@fluentui/react-components';
import { useCallback, useEffect, useState } from 'react';
import { lookAtRows, type AddedColumns, type RowsLooked } from '../../sheets/columns/needLook';
import type { Workbook } from '../../workbook/workbook';
import { countedText } from '../../core/countedText';
import { errorSentence } from '../../workbook/errorSentence';

const FIRST = 20;
/** Formulas are calculated after they are written: how often and how long that is waited for. */
const [EVERY_MS, TIMES] = [400, 25];

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: '1.2em', overflowWrap: 'anywhere', gap: tokens.spacingVerticalXS },
});

const WAITING = 'Not calculated yet';

function looksTitle({ rows, needLook }: RowsLooked): string {
  if (needLook.length === 0) return `Nothing to look at in ${countedText(rows, 'row')}`;
  return `${needLook.length} of ${countedText(rows, 'row')} ${needLook.length === 1 ? 'needs' : 'need'} a look`;
}

type Answer = { readonly added: AddedColumns } & ({ readonly looked: RowsLooked } | { readonly reason: string });

interface Props {
  readonly workbook: Workbook;
  /** Undefined while none were added. */
  readonly added: AddedColumns | undefined;
}

/** After columns were added: which rows answer with an error or a verdict, with a way to each. */
export function RowsToLook({ workbook, added }: Props) {
  const [answer, setAnswer] = useState<Answer>();
  const [isAll, setIsAll] = useState(false);
  const look = useCallback(async () => {
    if (!added) return false;
    try {
      const looked = await lookAtRows(workbook, added);
      setAnswer({ added, looked });
      return looked.isWaiting;
    } catch (error) {
      setAnswer({ added, reason: errorSentence(error) });
      return false;
    }
  }, [workbook, added]);
  useEffect(() => {
    let left = TIMES;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const again = async () => {
      const waits = await look();
      left -= 1;
      if (waits && left > 0 && timer !== undefined) timer = setTimeout(() => void again(), EVERY_MS);
    };
    timer = setTimeout(() => void again(), 0);
    return () => {
      clearTimeout(timer);
      timer = undefined;
    };
  }, [look]);
  const current = answer && answer.added === added ? answer : undefined;
  const looked = current && 'looked' in current ? current.looked : undefined;
  // The region is there before its words: some screen readers say only what changes in one.
  return (
    <>
      <div role="status">
        {looked && <Body1Strong>{looked.isWaiting && looked.needLook.length === 0 ? WAITING : looksTitle(looked)}</Body1Strong>}
        {current && 'reason' in current && (
          <MessageBar intent="warning">The new columns cannot be read: {current.reason}</MessageBar>
        )}
      </div>
      {added && looked && (
        <LookedList
          workbook={workbook}
          sheet={added.sheet}
          looked={looked}
          isAll={isAll}
          onAll={() => setIsAll(true)}
          onAgain={() => void look()}
        />
      )}
    </>
  );
}

interface ListProps {
  readonly workbook: Workbook;
  readonly sheet: string;
  readonly looked: RowsLooked;
  readonly isAll: boolean;
  readonly onAll: () => void;
  readonly onAgain: () => void;
}

function LookedList({ workbook, sheet, looked: { needLook, isWaiting }, isAll, onAll, onAgain }: ListProps) {
  const styles = useStyles();
  const shown = isAll ? needLook : needLook.slice(0, FIRST);
  if (needLook.length === 0 && !isWaiting) return null;
  return (
    <MessageBar intent={needLook.length > 0 ? 'warning' : 'info'} layout="multiline">
      <MessageBarBody>
        {shown.length > 0 && (
          <ul className={styles.list} aria-label="Rows to look at">
            {shown.map(({ row, at, what }) => (
              <li key={row}>
                <Link inline onClick={() => void workbook.select({ sheet, address: at })}>
                  Row {row}
                </Link>{' '}
                {what}
              </li>
            ))}
          </ul>
        )}
      </MessageBarBody>
      <MessageBarActions>
        <Button size="small" onClick={onAgain}>
          Look again
        </Button>
        {shown.length < needLook.length && (
          <Button size="small" onClick={onAll}>
            Show all {needLook.length}
          </Button>
        )}
      </MessageBarActions>
    </MessageBar>
  );
}
