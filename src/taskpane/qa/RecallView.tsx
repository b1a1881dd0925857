import { Body1, Button, Caption1, makeStyles, MessageBar, MessageBarBody, Subtitle2, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { gaugeOf } from '../../sheets/gauges/gauge';
import { PIECE_HEADINGS, PIECE_ROLE_CHOICES } from '../../sheets/pieces/pieceTable';
import { freeSheetName } from '../../sheets/print/freeSheetName';
import { newSheetWriting } from '../../sheets/print/writing';
import { recall, recallSentence, type Recall } from '../../sheets/recall/recall';
import { errorOf, FRESH_RECALL, requestOf } from '../../sheets/recall/recallFields';
import { recallSheet } from '../../sheets/recall/recallSheet';
import { RECORDS_SHEET } from '../../sheets/table/recordsSheet';
import { today } from '../../sheets/table/today';
import { HeadingsByHand } from '../controls/HeadingsByHand';
import { useWriting } from '../controls/useWriting';
import type { ViewProps } from '../controls/viewProps';
import { WriteButton } from '../controls/WriteButton';
import { TableRead } from '../controls/TableRead';
import { WritingBar } from '../controls/WritingBar';
import { RecallForm } from './RecallForm';
import { RecallResult } from './RecallResult';
import { useRecall, type RecallSources } from './useRecall';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  start: { alignSelf: 'flex-start' },
});

/** What a recall without pieces covers. */
const MISSING_PIECES = {
  records: `Only sheet ${RECORDS_SHEET} is searched: pieces without a record, and readings on other sheets, are not.`,
  nothing: `There are no rows on sheet ${RECORDS_SHEET}, either: nothing can be searched.`,
};

/** Finds the pieces, orders and records of a lot, a gauge or a span of days. */
export function RecallView({ workbook, goTo }: ViewProps) {
  const styles = useStyles();
  const [fields, setFields] = useState(FRESH_RECALL);
  const [isAsked, setIsAsked] = useState(false);
  const { view, refresh } = useRecall(workbook);
  const { outcome, write, undo } = useWriting(workbook);
  const sources: Partial<RecallSources> = view.status === 'ready' ? view : {};
  const { pieces, records = [], gauges } = sources;
  const known = gauges?.gauges ?? [];
  const kindOf = (name: string) => gaugeOf(known, name)?.kind ?? '';
  const request = requestOf(fields, kindOf);
  const kind = typeof request === 'object' && request.by === 'gauge' ? request.kind : '';
  const error = fields.by === 'gauge' ? errorOf(fields.error, kind) : undefined;
  const mistake = typeof request === 'string' ? request : typeof error === 'string' ? error : undefined;
  const off = typeof error === 'object' ? error : undefined;
  // Without pieces the records are searched all the same: they may be all that there is.
  const canSearch = pieces !== undefined || records.length > 0;
  const found: Recall | undefined =
    isAsked && typeof request === 'object' && !mistake && canSearch
      ? recall(pieces?.pieces ?? [], records, request, known)
      : undefined;
  const writeSheet = () =>
    write(async () => {
      if (!found) throw new Error('There is nothing to write yet.');
      const sheet = freeSheetName('Recall', await workbook.sheets(), today());
      const missing = [!pieces && 'No sheet Pieces', records.length === 0 && `No rows on sheet ${RECORDS_SHEET}`].filter(Boolean);
      const searched = [pieces?.sheet, records[0]?.sheet].filter(Boolean).join(' and ');
      const source = [`From sheet ${searched}, ${today()}`, ...missing].join('. ');
      return newSheetWriting(sheet, recallSheet(sheet, found, source, off));
    });
  return (
    <div className={styles.view}>
      <Body1>Which pieces, orders and records hold a lot, were measured with a gauge, or were made on some days.</Body1>
      {view.status === 'failed' && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{view.reason}</MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'ready' && !pieces && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            There is no sheet Pieces with the headings Piece and Hose.{' '}
            {MISSING_PIECES[records.length > 0 ? 'records' : 'nothing']} Writing a cut list makes it.{' '}
            <Button size="small" onClick={() => goTo('week/cut-list')}>
              Cut list
            </Button>
          </MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'ready' && !pieces && view.piecesSheet && (
        <HeadingsByHand workbook={workbook} of={PIECE_HEADINGS} sheet={view.piecesSheet} onCorrected={refresh} />
      )}
      <RecallForm
        fields={fields}
        gauges={[...new Set(known.map(({ name }) => name))]}
        onFields={change => {
          setFields({ ...fields, ...change });
          setIsAsked(false);
        }}
      />
      <Button
        className={styles.start}
        appearance="primary"
        disabled={view.status !== 'ready'}
        onClick={() => {
          setIsAsked(true);
          refresh();
        }}
      >
        Find
      </Button>
      {/* The region is there before its words: some screen readers say only what changes in one. */}
      <div role="status">
        {isAsked && mistake && (
          <MessageBar intent="error" layout="multiline">
            <MessageBarBody>{mistake}</MessageBarBody>
          </MessageBar>
        )}
        {isAsked && !mistake && !canSearch && view.status === 'ready' && (
          <MessageBar intent="error" layout="multiline">
            <MessageBarBody>
              Nothing was searched: there is neither a sheet Pieces nor a row on sheet {RECORDS_SHEET}.
            </MessageBarBody>
          </MessageBar>
        )}
        {found && <Subtitle2>{recallSentence(found)}</Subtitle2>}
      </div>
      {found && (
        <>
          <RecallResult workbook={workbook} found={found} error={off} />
          <WriteButton className={styles.start} disabled={outcome.kind === 'busy'} onClick={() => void writeSheet()}>
            Write as a new sheet
          </WriteButton>
          <WritingBar outcome={outcome} onUndo={() => void undo()} />
        </>
      )}
      {pieces && <TableRead workbook={workbook} kind="pieces" read={pieces} roles={PIECE_ROLE_CHOICES} onAnswered={refresh} />}
      <Caption1>
        Pieces and records whose row names no lot, gauge or day are listed as not to be excluded. A qualified person decides what
        is called back.
      </Caption1>
    </div>
  );
}
