import { Body1, Caption1, Link, makeStyles, MessageBar, MessageBarBody, tokens } from '@fluentui/react-components';
import { useCallback } from 'react';
import { dayNumber } from '../../core/units/sheetDate';
import { dueList } from '../../sheets/gauges/gaugeDue';
import { gaugesSheet } from '../../sheets/gauges/gaugesSheet';
import { pressureRangeNote } from '../../sheets/gauges/pressureRange';
import { GAUGE_HEADINGS, GAUGE_ROLE_CHOICES, GAUGES_SHEET, readGauges, type Gauges } from '../../sheets/gauges/readGauges';
import { gaugeOf } from '../../sheets/gauges/gauge';
import type { Piece } from '../../sheets/pieces/piece';
import { readPieces } from '../../sheets/pieces/readPieces';
import { today } from '../../sheets/table/today';
import type { Workbook } from '../../workbook/workbook';
import { HeadingsByHand } from '../controls/HeadingsByHand';
import { useSettledView } from '../controls/useSettledView';
import { useWriting } from '../controls/useWriting';
import type { ViewProps } from '../controls/viewProps';
import { WriteButton } from '../controls/WriteButton';
import { TableRead } from '../controls/TableRead';
import { WritingBar } from '../controls/WritingBar';
import { GaugeStudies } from './GaugeStudies';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  start: { alignSelf: 'flex-start' },
});

interface GaugesRead {
  readonly status: 'ready';
  readonly gauges: Gauges | undefined;
  /** The sheet Gauges, as it is called. */
  readonly sheet: string | undefined;
  readonly pieces: readonly Piece[];
}

async function read(workbook: Workbook): Promise<GaugesRead> {
  const [gauges, pieces, sheets] = await Promise.all([readGauges(workbook), readPieces(workbook), workbook.sheets()]);
  const sheet = sheets.find(name => name.toLowerCase() === GAUGES_SHEET.toLowerCase());
  return { status: 'ready', gauges, sheet, pieces: pieces?.pieces ?? [] };
}

/** Gauges of pieces that read their test pressures badly, each sentence once. */
function rangeNotes({ gauges }: Gauges, pieces: readonly Piece[]): readonly string[] {
  const all = pieces.flatMap(({ gauges: names, testPressure }) =>
    names.flatMap(name => {
      const gauge = gaugeOf(gauges, name);
      return (gauge && testPressure && pressureRangeNote(gauge, testPressure)) ?? [];
    }),
  );
  return [...new Set(all)];
}

/** The workshop's gauges: what is due, what must not be used, and how good they are. */
export function GaugesView({ workbook }: ViewProps) {
  const styles = useStyles();
  const reading = useCallback((from: Workbook) => read(from), []);
  const { view, refresh } = useSettledView<GaugesRead>(workbook, reading);
  const { outcome, write, undo } = useWriting(workbook, refresh);
  const gauges = view.status === 'ready' ? view.gauges : undefined;
  const due = gauges ? dueList(gauges.gauges, dayNumber(today())!) : [];
  const late = due.filter(({ isOverdue }) => isOverdue);
  const notes = gauges && view.status === 'ready' ? rangeNotes(gauges, view.pieces) : [];
  const show = (row: number) => void workbook.select({ sheet: gauges!.sheet, address: `A${row}` });
  const list = (items: typeof due) =>
    items.map(({ gauge, sentence }) => (
      <div key={gauge.row}>
        <Link inline onClick={() => show(gauge.row)}>
          {gauge.name}
        </Link>
        {`: ${sentence}`}
      </div>
    ));
  return (
    <div className={styles.view}>
      {view.status === 'failed' && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>{view.reason}</MessageBarBody>
        </MessageBar>
      )}
      {view.status === 'ready' && !gauges && (
        <>
          <Body1>
            {view.sheet
              ? 'No gauges on sheet Gauges yet: enter one row a gauge, below the headings Gauge and Checked.'
              : 'There is no sheet Gauges: one row a caliper, pressure gauge or die, with the day of its last check.'}
          </Body1>
          {view.sheet && <HeadingsByHand workbook={workbook} of={GAUGE_HEADINGS} sheet={view.sheet} onCorrected={refresh} />}
          {!view.sheet && (
            <WriteButton className={styles.start} disabled={outcome.kind === 'busy'} onClick={() => void write(gaugesSheet)}>
              Add sheet Gauges
            </WriteButton>
          )}
        </>
      )}
      {gauges && (
        <>
          <Body1 role="status">
            {late.length === 0
              ? `${due.length} gauges, none overdue.`
              : `${late.length} of ${due.length} gauges must not be used for a record.`}
          </Body1>
          {late.length > 0 && (
            <MessageBar intent="error" layout="multiline">
              <MessageBarBody>{list(late)}</MessageBarBody>
            </MessageBar>
          )}
          <div>{list(due.filter(({ isOverdue }) => !isOverdue))}</div>
          {notes.map(note => (
            <MessageBar key={note} intent="warning" layout="multiline">
              <MessageBarBody>{note}</MessageBarBody>
            </MessageBar>
          ))}
        </>
      )}
      <WritingBar outcome={outcome} onUndo={() => void undo()} />
      <GaugeStudies workbook={workbook} />
      {gauges && <TableRead workbook={workbook} kind="gauges" read={gauges} roles={GAUGE_ROLE_CHOICES} onAnswered={refresh} />}
      <Caption1>An overdue gauge is refused in records. How often a gauge is checked is the workshop’s own rule.</Caption1>
    </div>
  );
}
