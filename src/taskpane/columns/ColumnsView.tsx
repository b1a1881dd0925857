import { Body1, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, Spinner, tokens } from '@fluentui/react-components';
import { useEffect, useRef, useState } from 'react';
import type { ViewProps } from '../controls/viewProps';
import { COLUMN_HEADINGS } from '../../sheets/columns/columnHeadings';
import { HeadingsByHand } from '../controls/HeadingsByHand';
import type { AddedColumns } from '../../sheets/columns/needLook';
import { RowsToLook } from './RowsToLook';
import { TableColumns } from './TableColumns';
import { TablesToSelect } from '../controls/TablesToSelect';
import { ToldBar, type Told } from '../controls/ToldBar';
import { useColumnsView } from './useColumnsView';

const useStyles = makeStyles({
  panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalL },
  result: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
});

/** Adds columns of ours to someone's own table. */
export function ColumnsView({ workbook, goTo }: ViewProps) {
  const styles = useStyles();
  const { view, refresh } = useColumnsView(workbook);
  // Kept here: another table that is selected is proposed anew.
  const [message, setTold] = useState<Told>();
  const [added, setAdded] = useState<AddedColumns>();
  const result = useRef<HTMLDivElement>(null);
  // The button that adds columns is far below: what came of it is brought into sight.
  useEffect(() => {
    if (message) result.current?.scrollIntoView?.({ block: 'nearest' });
  }, [message]);
  return (
    <div className={styles.panel}>
      <div className={styles.result} ref={result}>
        <ToldBar message={message} />
        <RowsToLook workbook={workbook} added={added} />
      </div>
      {view.status === 'loading' && <Spinner label="Reading the table" />}
      {view.status === 'failed' && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>The table cannot be read</MessageBarTitle>
            {view.reason}
          </MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'none' && (
        <>
          <Body1>
            No table here. This view adds columns to your own table: cut length, die and dial, price, verdicts. Select a cell of
            the table: one row of headings (hose, overall length, quantity, …) with rows below.
          </Body1>
          <TablesToSelect workbook={workbook} />
          <HeadingsByHand workbook={workbook} of={COLUMN_HEADINGS} onCorrected={refresh} />
        </>
      )}
      {view.status === 'ready' && (
        <TableColumns
          key={view.id}
          workbook={workbook}
          view={view}
          onTold={setTold}
          onAdded={setAdded}
          onLoadParts={() => goTo('parts/load')}
          onAgain={refresh}
        />
      )}
    </div>
  );
}
