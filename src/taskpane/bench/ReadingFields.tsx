import { Field, Input, makeStyles, tokens } from '@fluentui/react-components';
import { useEffect, useRef, type KeyboardEvent } from 'react';
import type { EntryAction, EntryState } from '../../sheets/crimps/entry';

const useStyles = makeStyles({
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(112px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  input: {
    minWidth: 0,
    width: '100%',
    height: '48px',
    '& input': { fontSize: tokens.fontSizeBase600, fontVariantNumeric: 'tabular-nums' },
  },
});

interface Props {
  readonly state: EntryState;
  readonly dispatch: (action: EntryAction) => void;
  readonly onUndo: () => void;
}

/** The fields of one crimp's readings: a caliper types a value and Enter, which leads to the next field and in the end to the next row. */
export function ReadingFields({ state, dispatch, onUndo }: Props) {
  const styles = useStyles();
  const inputs = useRef<(HTMLInputElement | null)[]>([]);
  const { field, stop, texts, turn } = state;
  useEffect(() => {
    const input = inputs.current[field];
    input?.focus();
    input?.select();
    // Typing must not mark what was typed: only a turn does.
  }, [turn, field]);

  const onKey = (pressed: KeyboardEvent, position: number) => {
    const action = actionOf(pressed, texts[position] ?? '');
    if (!action) return;
    pressed.preventDefault();
    if (action === 'undo') return onUndo();
    dispatch({ type: action });
  };

  const row = state.rows[state.index]!;
  return (
    <div className={styles.grid} role="group" aria-label={`Readings of ${row.title}${row.end && `, end ${row.end}`}`}>
      {texts.map((text, position) => (
        <Field
          key={position}
          label={`Reading ${position + 1}`}
          validationState={stop && position === field ? (stop.kind === 'refused' ? 'error' : 'warning') : 'none'}
        >
          <Input
            className={styles.input}
            input={{ ref: element => void (inputs.current[position] = element) }}
            inputMode="decimal"
            autoComplete="off"
            value={text}
            onFocus={() => dispatch({ type: 'focus', field: position })}
            onChange={(_, { value }) => dispatch({ type: 'type', field: position, text: value })}
            onKeyDown={pressed => onKey(pressed, position)}
          />
        </Field>
      ))}
    </div>
  );
}

type KeyAction = 'enter' | 'back' | 'escape' | 'skip' | 'previous' | 'forward' | 'undo';

/** What a key means in a reading's field; undefined leaves it to the field. */
function actionOf({ key, shiftKey, ctrlKey, metaKey }: KeyboardEvent, text: string): KeyAction | undefined {
  if (key === 'Enter') return shiftKey ? 'back' : 'enter';
  if (key === 'ArrowUp') return 'back';
  if (key === 'ArrowDown') return 'forward';
  if (key === 'Escape') return 'escape';
  if (key === 'PageDown') return 'skip';
  if (key === 'PageUp') return 'previous';
  if (key.toLowerCase() === 'z' && (ctrlKey || metaKey) && text === '') return 'undo';
  return undefined;
}
