import { useEffect, useRef } from 'react';
import type { Farewell } from './useUnsaved';

interface UnsavedDialogProps {
  readonly title: string;
  /** Takes the answer; undefined while nothing is asked. */
  readonly onAnswer: ((answer: Farewell) => void) | undefined;
}

/** Asks before changes that stand in no file are left behind. */
export function UnsavedDialog({ title, onAnswer }: UnsavedDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const isAsked = onAnswer !== undefined;
  useEffect(() => {
    if (!isAsked) return undefined;
    const asker = document.activeElement;
    dialog.current!.showModal();
    return () => {
      if (asker instanceof HTMLElement) asker.focus();
    };
  }, [isAsked]);
  if (!onAnswer) return null;
  return (
    <dialog
      ref={dialog}
      className="unsaved"
      aria-labelledby="unsaved-title"
      onCancel={event => {
        event.preventDefault();
        onAnswer('stay');
      }}
    >
      <h2 id="unsaved-title">Unsaved changes</h2>
      <p>{title} has unsaved changes.</p>
      <div className="choices">
        <button type="button" onClick={() => onAnswer('save')}>
          Save as .xlsx, then go on
        </button>
        <button type="button" onClick={() => onAnswer('drop')}>
          Go on without saving
        </button>
        <button type="button" onClick={() => onAnswer('stay')}>
          Stay here
        </button>
      </div>
    </dialog>
  );
}
