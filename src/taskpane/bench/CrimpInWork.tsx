import { Button, Caption1, Field, Input, makeStyles, MessageBar, MessageBarBody, Text, tokens } from '@fluentui/react-components';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { trialPiece } from '../../sheets/crimps/trialPiece';
import { WHERE_TO_MEASURE } from '../../sheets/print/cautions';
import { crimpPlace } from '../../sheets/crimps/crimpPlace';
import { hasAllReadings, type CrimpRow } from '../../sheets/crimps/crimpRow';
import type { EntryAction, EntryState } from '../../sheets/crimps/entry';
import { crimpLimitsText } from '../../sheets/crimps/crimpText';
import { smallText } from '../../sheets/table/smallText';
import { ReadingFields } from './ReadingFields';
import { assumedDial, suggestedDial, type SuggestedDial } from '../../sheets/crimps/rowInWork';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  title: { fontSize: tokens.fontSizeBase600, lineHeight: tokens.lineHeightBase600, overflowWrap: 'anywhere', margin: 0 },
  large: { fontSize: tokens.fontSizeBase500, lineHeight: tokens.lineHeightBase500, overflowWrap: 'anywhere' },
  row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
  dial: { maxWidth: '160px', '& input': { fontSize: tokens.fontSizeBase500 } },
});

interface Props {
  readonly state: EntryState;
  readonly dispatch: (action: EntryAction) => void;
  readonly onUndo: () => void;
  readonly catalogue: Catalogue | undefined;
  readonly onOperator: (text: string) => void;
}

function endSentence(rows: EntryState['rows'], hasBlank: boolean): string {
  if (rows.every(row => row.problem)) return 'No row here can take readings: see below why.';
  return hasBlank ? 'The end of the table. Rows further up are still blank.' : 'All rows have their readings.';
}

function Finished({ state, dispatch }: Pick<Props, 'state' | 'dispatch'>) {
  const styles = useStyles();
  const first = state.rows.findIndex(row => !hasAllReadings(row) && !row.problem);
  return (
    <>
      <MessageBar intent={first < 0 ? 'success' : 'info'} layout="multiline">
        <MessageBarBody>{endSentence(state.rows, first >= 0)}</MessageBarBody>
      </MessageBar>
      <div className={styles.row}>
        {first >= 0 && (
          <Button size="small" onClick={() => dispatch({ type: 'goTo', index: first })}>
            Go to the first blank row
          </Button>
        )}
        <Button size="small" onClick={() => dispatch({ type: 'previous' })}>
          Row before
        </Button>
      </div>
    </>
  );
}

/** Where the dial comes from, and what the last crimp of its kind has to do with it. */
function dialHint(state: EntryState, row: CrimpRow, suggested: SuggestedDial | undefined): string | undefined {
  const typed = state.dialText.trim();
  const written = row.fields.dial?.value === '' ? '; it is written to the row.' : '';
  if (row.dial) return typed === row.dial.value.toString() ? `From ${row.dial.from}` : undefined;
  const isUsed = suggested?.why === 'used';
  if (suggested?.dial.toString() === typed) {
    return isUsed
      ? 'As used for the last crimp of this kind: correct it if the dial was changed since.'
      : 'As the last crimp of this kind asked for: correct it if the dial was not changed.';
  }
  if (state.memory.dials[crimpPlace(row)] === typed && typed !== '') return 'As entered for this crimp before';
  if (suggested) {
    return `The last crimp of this kind ${isUsed ? 'was made with' : 'asked for'} ${suggested.dial}: correct it if the dial was changed.`;
  }
  return row.wantedDial && typed === assumedDial(state, row) ? `From ${row.wantedDial.from}${written}` : undefined;
}

/** The crimp that is measured now: what it is, its target and limits, its fields. */
export function CrimpInWork({ state, dispatch, onUndo, catalogue, onOperator }: Props) {
  const styles = useStyles();
  const { index, rows, stop } = state;
  const row = rows[index];
  if (!row) return <Finished state={state} dispatch={dispatch} />;
  const suggested = suggestedDial(state, row);
  const trial = trialPiece(catalogue, row);
  const die = row.die || row.wantedDie;
  return (
    <section className={styles.view} aria-label="Crimp in work">
      <h2 className={styles.title}>
        {row.title}
        {row.end && `, end ${row.end}`}
      </h2>
      <Text>{[row.combination, die && `die ${die}`, row.machine].filter(Boolean).join(' · ')}</Text>

      <Text className={styles.large}>
        Target <b>{smallText(row.target!.value, row.unit)}</b> {row.unit}, mean within <b>{crimpLimitsText(row)}</b>
      </Text>
      {row.notes.map(note => (
        <Caption1 key={note}>{note}</Caption1>
      ))}
      <ReadingFields state={state} dispatch={dispatch} onUndo={onUndo} />
      {stop && (
        <MessageBar intent={stop.kind === 'refused' ? 'error' : 'warning'} layout="multiline" role="alert">
          <MessageBarBody>{stop.sentence}</MessageBarBody>
        </MessageBar>
      )}
      {trial && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            {trial.sentence}{' '}
            {trial.dial !== undefined && (
              <Button size="small" onClick={() => dispatch({ type: 'dial', text: trial.dial! })}>
                Use {trial.dial} for one trial piece
              </Button>
            )}
          </MessageBarBody>
        </MessageBar>
      )}
      <div className={styles.row}>
        <Field className={styles.dial} label="Dial used" hint={dialHint(state, row, suggested)}>
          <Input
            size="large"
            inputMode="decimal"
            autoComplete="off"
            value={state.dialText}
            onChange={(_, { value }) => dispatch({ type: 'dial', text: value })}
          />
        </Field>
        <Field className={styles.dial} label="Crimped by">
          <Input size="large" value={state.operator} onChange={(_, { value }) => onOperator(value)} />
        </Field>
      </div>
      <div className={styles.row}>
        <Button size="small" onClick={() => dispatch({ type: 'previous' })}>
          Row before (Page Up)
        </Button>
        <Button size="small" onClick={() => dispatch({ type: 'skip' })}>
          Skip (Page Down)
        </Button>
      </div>
      <Caption1>
        Measure {WHERE_TO_MEASURE}. Enter: next field, after the last one the row is written. Shift+Enter: back. Escape: as it
        was. Ctrl+Z in an empty field: undo the last crimp.
      </Caption1>
    </section>
  );
}
