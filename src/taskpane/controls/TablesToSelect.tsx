import { Body1, Button, makeStyles, tokens } from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import { tablesToSelect, type TableHolds, type TableToSelect } from '../../sheets/columns/tablesToSelect';
import type { Workbook } from '../../workbook/workbook';
import { useOnSheets } from './useOnSheets';

const FIRST = 6;

const useStyles = makeStyles({
  offer: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  list: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

const WORDS: Readonly<Record<TableHolds, string>> = { lines: 'Tables with job lines:', readings: 'Tables with readings:' };

interface Props {
  readonly workbook: Workbook;
  /** What the tables must hold; job lines or readings where left out. */
  readonly holds?: TableHolds;
  /** A table is selected: a view that does not follow the selection reads it now. */
  readonly onSelected?: () => void;
}

/** Ways to the tables of this workbook that a view could read, one press each; nothing where it has none. */
export function TablesToSelect({ workbook, holds, onSelected }: Props) {
  const styles = useStyles();
  const [found, setFound] = useState<readonly TableToSelect[]>([]);
  const look = useCallback(async () => setFound(await tablesToSelect(workbook).catch(() => [])), [workbook]);
  useOnSheets(workbook, look);
  const offered = found.filter(table => !holds || table.holds === holds);
  if (offered.length === 0) return null;
  const select = async ({ sheet, address }: TableToSelect) => {
    await workbook.select({ sheet, address: address.split(':')[0]! });
    onSelected?.();
  };
  return (
    <div className={styles.offer}>
      {holds && <Body1>{WORDS[holds]}</Body1>}
      <div className={styles.list} role="group" aria-label="Tables of this workbook">
        {offered.slice(0, FIRST).map(table => (
          <Button key={`${table.sheet}!${table.address}`} onClick={() => void select(table)}>
            {table.sheet} {table.address}
          </Button>
        ))}
      </div>
    </div>
  );
}
