import {
  Button,
  Link,
  makeStyles,
  MessageBar,
  MessageBarActions,
  MessageBarBody,
  MessageBarTitle,
  tokens,
} from '@fluentui/react-components';
import { useCallback, useEffect, useState } from 'react';
import { lookAtRows, type AddedColumns, type RowsLooked } from '../../sheets/columns/needLook';
import type { Workbook } from '../../workbook/workbook';

const FIRST = 20;
/** Formulas are calculated after they are written: how often and how long that is waited for. */
const [EVERY_MS, TIMES] = [400, 25];

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: '1.2em', overflowWrap: 'anywhere', gap: tokens.spacingVerticalXS },
});

const count = (rows: number) => (rows === 1 ? '1 row' : `${rows} rows`);

function titleOf({ rows, needLook }: RowsLooked): string {
  if (needLook.length === 0) return `Nothing to look at in ${count(rows)}`;
  return `${needLook.length} of ${count(rows)} ${needLook.length === 1 ? 'needs' : 'need'} a look`;
}

interface Props {
  readonly workbook: Workbook;
  readonly added: AddedColumns;
}

/** After columns were added: which rows answer with an error or a verdict, with a way to each. */
export function RowsToLook({ workbook, added }: Props) {
  const styles = useStyles();
  const [looked, setLooked] = useState<RowsLooked>();
  const [reason, setReason] = useState<string>();
  const [isAll, setIsAll] = useState(false);
  const look = useCallback(async () => {
    try {
      const found = await lookAtRows(workbook, added);
      setReason(undefined);
      setLooked(found);
      return found.isWaiting;
    } catch (error) {
      setReason(error instanceof Error ? error.message : String(error));
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
  if (reason !== undefined) return <MessageBar intent="warning">The new columns cannot be read: {reason}</MessageBar>;
  if (!looked) return null;
  const { needLook, isWaiting } = looked;
  const shown = isAll ? needLook : needLook.slice(0, FIRST);
  return (
    <MessageBar intent={needLook.length > 0 ? 'warning' : isWaiting ? 'info' : 'success'} layout="multiline">
      <MessageBarBody>
        <MessageBarTitle role="status">
          {isWaiting && needLook.length === 0 ? 'Not calculated yet' : titleOf(looked)}
        </MessageBarTitle>
        {shown.length > 0 && (
          <ul className={styles.list} aria-label="Rows to look at">
            {shown.map(({ row, at, what }) => (
              <li key={row}>
                <Link inline onClick={() => void workbook.select({ sheet: added.sheet, address: at })}>
                  Row {row}
                </Link>{' '}
                {what}
              </li>
            ))}
          </ul>
        )}
      </MessageBarBody>
      <MessageBarActions>
        <Button size="small" onClick={() => void look()}>
          Look again
        </Button>
        {shown.length < needLook.length && (
          <Button size="small" onClick={() => setIsAll(true)}>
            Show all {needLook.length}
          </Button>
        )}
      </MessageBarActions>
    </MessageBar>
  );
}
