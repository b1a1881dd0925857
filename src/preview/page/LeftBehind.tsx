import type { KeptWorkbook } from './keptWorkbooks';

interface LeftBehindProps {
  readonly kept: KeptWorkbook;
  readonly isReady: boolean;
  onBringBack(): void;
  onThrowAway(): void;
}

/** Offers a workbook that was open when the page ended, with changes that were in no file. */
export function LeftBehind({ kept: { title, at }, isReady, onBringBack, onThrowAway }: LeftBehindProps) {
  const when = new Date(at).toLocaleString('en', { dateStyle: 'medium', timeStyle: 'short' });
  return (
    <div className="kept" role="region" aria-label="Unsaved workbook">
      <span>
        {title} was open here with changes that were not saved ({when}).
      </span>
      <button type="button" disabled={!isReady} onClick={onBringBack}>
        Bring it back
      </button>
      <button type="button" onClick={onThrowAway}>
        Throw it away
      </button>
    </div>
  );
}
