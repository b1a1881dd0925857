import {
  Accordion,
  AccordionHeader,
  AccordionItem,
  AccordionPanel,
  Button,
  Caption1,
  makeStyles,
  MessageBar,
  MessageBarBody,
  Spinner,
  Text,
  tokens,
} from '@fluentui/react-components';
import { useRef } from 'react';
import { today } from '../../sheets/table/today';
import type { ViewProps } from '../controls/viewProps';
import { AcceptDial } from '../controls/AcceptDial';
import type { DialProposal } from '../../sheets/machines/dialProposal';
import { AS_ENTERED, hasAllReadings } from '../../sheets/crimps/crimpRow';
import type { EntryResult } from '../../sheets/crimps/entry';
import { crimpReport } from '../../sheets/crimps/readCrimpRows';
import { CrimpSettings } from '../controls/CrimpSettings';
import { CRIMP_HEADINGS } from '../../sheets/crimps/crimpHeadings';
import { TablesToSelect } from '../controls/TablesToSelect';
import { HeadingsByHand } from '../controls/HeadingsByHand';
import { CrimpsRead } from '../controls/CrimpsRead';
import { AddColumns } from './AddColumns';
import { CrimpInWork } from './CrimpInWork';
import { PieceBar } from './PieceBar';
import { useEntry, type WhenEntered } from './useEntry';
import { usePiece } from './usePiece';
import { usePieceStatus } from './usePieceStatus';
import { useScannedTag } from './useScannedTag';
import { VerdictCard } from './VerdictCard';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM },
  row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

const NOT_PROVED = 'Not proven yet: record it once a trial piece made with it is in spec.';
const NONE =
  'No readings here. Select a cell of a table with columns Reading 1 … Reading 4 (or A 1 … A 4 and B 1 … B 4) and a target, then read the rows.';

const withStop = (sentence: string) => (/[.!?]$/.test(sentence) ? sentence : `${sentence}.`);

/** The dial that is worth keeping: what the last crimp asks for, or one that was set by hand and proved right. */
function proposalOf({ row, judgement: { next, verdict } }: EntryResult): DialProposal | undefined {
  const { machine, hose, fitting, dial } = row;
  const die = row.die || row.wantedDie;
  const isProved = verdict === 'IN SPEC' && dial?.from === AS_ENTERED;
  const wanted = next.kind === 'move' ? next.to : isProved ? dial.value : undefined;
  return wanted && { machine, die, hose, fitting, dial: wanted, date: today(), note: '' };
}

/** At the bench: one crimp after the other, typed by the caliper, judged at once, written to its row. */
export function EntryView({ workbook, scanned }: ViewProps) {
  const styles = useStyles();
  const onEntered = useRef<WhenEntered>(() => {});
  const { state, dispatch, status, read, take, fields, setFields, setOperator, load, undo, undoRefusal } = useEntry(
    workbook,
    (...of) => onEntered.current(...of),
  );
  const piece = usePiece(workbook, load, read?.reading);
  useScannedTag(scanned, piece.find);
  const { refusal: statusRefusal, inWork } = usePieceStatus(workbook, state, piece, onEntered, read?.reading);
  const { rows, last, failure } = state;
  const open = rows.filter(row => !hasAllReadings(row) && !row.problem).length;
  const report = read && crimpReport(read.reading, ({ problem }) => problem);
  const proposal = last && proposalOf(last);
  const again = () => load(rows[state.index]?.row ?? rows[0]?.row);
  return (
    <div className={styles.view}>
      <PieceBar piece={piece} operator={state.operator} inWork={inWork} />
      {statusRefusal && (
        <MessageBar intent="warning" layout="multiline" role="alert">
          <MessageBarBody>The status was not brought up to date: {statusRefusal}</MessageBarBody>
        </MessageBar>
      )}
      {status.kind === 'loading' && <Spinner label="Reading the rows" />}
      {status.kind === 'failed' && (
        <MessageBar intent="error" layout="multiline" role="alert">
          <MessageBarBody>The rows cannot be read: {status.reason}</MessageBarBody>
        </MessageBar>
      )}
      {status.kind === 'none' && <Text>{NONE}</Text>}
      {status.kind === 'none' && <TablesToSelect workbook={workbook} holds="readings" onSelected={() => load()} />}
      {status.kind === 'none' && !read && <HeadingsByHand workbook={workbook} of={CRIMP_HEADINGS} onCorrected={() => load()} />}
      {failure && (
        <MessageBar intent="error" layout="multiline" role="alert">
          <MessageBarBody>
            {failure.result.row.title} was NOT written: {withStop(failure.sentence)} Its readings are kept here.{' '}
            <Button size="small" onClick={() => dispatch({ type: 'goTo', index: failure.result.index })}>
              Go back to it
            </Button>
          </MessageBarBody>
        </MessageBar>
      )}
      {status.kind === 'ready' && (
        <>
          <Caption1>
            Sheet {rows[0]!.sheet}: {open} of {rows.length} crimps wait for readings.
          </Caption1>
          <div role="status" aria-label="Last crimp">
            {last && <VerdictCard row={last.row} judgement={last.judgement} isWritten={!state.pending.includes(last)} />}
          </div>
          {proposal && last && (
            <AcceptDial
              key={`${last.index} ${proposal.dial}`}
              workbook={workbook}
              proposal={proposal}
              label={`Record dial ${proposal.dial} in Machines …`}
              caution={last.judgement.verdict === 'IN SPEC' ? undefined : NOT_PROVED}
            />
          )}
          <CrimpInWork
            state={state}
            dispatch={dispatch}
            onUndo={() => void undo()}
            catalogue={read?.reading.catalogue}
            onOperator={setOperator}
          />
          {undoRefusal && (
            <MessageBar intent="error" layout="multiline" role="alert">
              <MessageBarBody>{undoRefusal}</MessageBarBody>
            </MessageBar>
          )}
        </>
      )}
      {status.kind !== 'loading' && (
        <div className={styles.row}>
          <Button onClick={() => load()}>Read the selected rows</Button>
          <Button disabled={state.done.length === 0 || state.pending.length > 0} onClick={() => void undo()}>
            Undo the last crimp
          </Button>
        </div>
      )}
      {read && (
        <>
          <CrimpsRead
            workbook={workbook}
            sheet={read.reading.sheet}
            reading={read.reading}
            report={read.reading.tables.length > 0 ? report : undefined}
            table={read.sheet.own}
            take={take}
            onTake={taken => load(undefined, taken)}
            onChanged={again}
          />
          <AddColumns workbook={workbook} reading={read.reading} onAdded={again} />
          <Accordion collapsible>
            <AccordionItem value="settings">
              <AccordionHeader size="small">Limits and machine</AccordionHeader>
              <AccordionPanel className={styles.view}>
                <CrimpSettings
                  fields={fields}
                  unit={read.reading.unit}
                  isColumn={read.reading.tables.some(({ layout }) => layout === 'column')}
                  machines={[...(read.reading.catalogue?.index.machines.values() ?? [])]}
                  onChange={setFields}
                />
                <Button onClick={again}>Use these</Button>
              </AccordionPanel>
            </AccordionItem>
          </Accordion>
        </>
      )}
      <Caption1>
        A new dial is tried on one trial piece before the batch goes on. Keep hands out of the crimper. The makers’ current data
        come first; local codes and a qualified person decide.
      </Caption1>
    </div>
  );
}
