import { Link, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, tokens } from '@fluentui/react-components';
import type { RemovedInUse } from '../../sheets/parts/partsInUse';
import type { Workbook } from '../../workbook/workbook';

const SHOWN = 20;

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, overflowWrap: 'anywhere' },
});

interface Props {
  readonly workbook: Workbook;
  readonly removed: readonly RemovedInUse[];
}

/** Parts that go though the workbook still uses them: their rows would find nothing. */
export function RemovedInUseBar({ workbook, removed }: Props) {
  const styles = useStyles();
  if (removed.length === 0) return null;
  return (
    <MessageBar intent="warning" layout="multiline">
      <MessageBarBody>
        <MessageBarTitle>
          {removed.length} removed {removed.length === 1 ? 'part is' : 'parts are'} still used
        </MessageBarTitle>
        Rows that name a removed part will show #N/A.
        <ul className={styles.list}>
          {removed.slice(0, SHOWN).map(({ name, table, uses, at }) => (
            <li key={`${table} ${name}`}>
              {at ? (
                <Link inline onClick={() => void workbook.select(at)}>
                  {name}
                </Link>
              ) : (
                name
              )}
              : {uses.join('; ')}
            </li>
          ))}
        </ul>
        {removed.length > SHOWN && `and ${removed.length - SHOWN} more.`}
      </MessageBarBody>
    </MessageBar>
  );
}
