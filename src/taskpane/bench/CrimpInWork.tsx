import { Button, Caption1, Field, Input, makeStyles, MessageBar, MessageBarBody, Text, tokens } from '@fluentui/react-components';
import { WHERE_TO_MEASURE } from '../../sheets/print/cautions';
import { AS_ENTERED, isFilled, type EntrySlot } from '../../sheets/crimps/entrySlot';
import type { EntryAction, EntryState } from '../../sheets/crimps/entry';
import { limitsText } from '../../sheets/crimps/judgeSlot';
import { ReadingFields } from './ReadingFields';
import { suggestedDial, type SuggestedDial } from '../../sheets/crimps/slotInWork';

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
}

function endSentence(slots: EntryState['slots'], hasBlank: boolean): string {
  if (slots.every(slot => slot.problem)) return 'No row here can take readings: see below why.';
  return hasBlank ? 'The end of the table. Rows further up are still blank.' : 'All rows have their readings.';
}

function Finished({ state, dispatch }: Pick<Props, 'state' | 'dispatch'>) {
  const styles = useStyles();
  const first = state.slots.findIndex(slot => !isFilled(slot) && !slot.problem);
  return (
    <>
      <MessageBar intent={first < 0 ? 'success' : 'info'} layout="multiline">
        <MessageBarBody>{endSentence(state.slots, first >= 0)}</MessageBarBody>
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
function dialHint(slot: EntrySlot, typed: string, suggested: SuggestedDial | undefined): string | undefined {
  const isUsed = suggested?.why === 'used';
  if (suggested?.dial.toString() === typed.trim()) {
    return isUsed
      ? 'As used for the last crimp of this kind: correct it if it was turned since.'
      : 'As the last crimp of this kind asked for: correct it if it was not turned.';
  }
  if (suggested) {
    return `The last crimp of this kind ${isUsed ? 'was made with' : 'asked for'} ${suggested.dial}: correct it if it was turned.`;
  }
  if (typed.trim() !== slot.dial?.value.toString()) return undefined;
  const source = slot.dial.from === AS_ENTERED ? 'As entered' : `From ${slot.dial.from}`;
  return slot.dialCell && slot.dialStanding === '' ? `${source}; it is written to the row.` : source;
}

/** The crimp that is measured now: what it is, its target and limits, its fields. */
export function CrimpInWork({ state, dispatch, onUndo }: Props) {
  const styles = useStyles();
  const { index, slots, stop } = state;
  const slot = slots[index];
  if (!slot) return <Finished state={state} dispatch={dispatch} />;
  const suggested = suggestedDial(state, slot);
  return (
    <section className={styles.view} aria-label="Crimp in work">
      <h2 className={styles.title}>
        {slot.title}
        {slot.end && `, end ${slot.end}`}
      </h2>
      <Text>{[slot.combination, slot.die && `die ${slot.die}`, slot.machine].filter(Boolean).join(' · ')}</Text>

      <Text className={styles.large}>
        Target <b>{slot.target!.value.toString()}</b> {slot.unit}, mean within <b>{limitsText(slot)}</b>
      </Text>
      {slot.notes.map(note => (
        <Caption1 key={note}>{note}</Caption1>
      ))}
      <ReadingFields state={state} dispatch={dispatch} onUndo={onUndo} />
      {stop && (
        <MessageBar intent={stop.kind === 'refused' ? 'error' : 'warning'} layout="multiline" role="alert">
          <MessageBarBody>{stop.sentence}</MessageBarBody>
        </MessageBar>
      )}
      <Field className={styles.dial} label="Dial used" hint={dialHint(slot, state.dialText, suggested)}>
        <Input
          size="large"
          inputMode="decimal"
          autoComplete="off"
          value={state.dialText}
          onChange={(_, { value }) => dispatch({ type: 'dial', text: value })}
        />
      </Field>
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
