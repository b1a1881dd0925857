import { Button, makeStyles, tokens } from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import { tablesToSelect } from '../../sheets/columns/tablesToSelect';
import { useOnSheets } from '../controls/useOnSheets';
import type { RangeAddress, Workbook } from '../../workbook/workbook';

const FIRST = 6;

const useStyles = makeStyles({ list: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS } });

/** Ways to the tables of this workbook that columns can be added to; nothing where it has none. */
export function TablesToSelect({ workbook }: { readonly workbook: Workbook }) {
  const styles = useStyles();
  const [found, setFound] = useState<readonly RangeAddress[]>([]);
  const look = useCallback(async () => setFound(await tablesToSelect(workbook).catch(() => [])), [workbook]);
  useOnSheets(workbook, look);
  if (found.length === 0) return null;
  return (
    <div className={styles.list} role="group" aria-label="Tables of this workbook">
      {found.slice(0, FIRST).map(({ sheet, address }) => (
        <Button key={`${sheet}!${address}`} onClick={() => void workbook.select({ sheet, address: address.split(':')[0]! })}>
          {sheet} {address}
        </Button>
      ))}
    </div>
  );
}
