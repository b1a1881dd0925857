import { useEffect, useState } from 'react';
import type { NotedCell, Spreadsheet } from './spreadsheet';
import { cellWords } from '../../workbook/cellWords';

interface StatusLineProps {
  readonly spreadsheet: Spreadsheet | undefined;
  readonly busy: string;
  readonly notes: readonly string[];
}

function spoken({ address, value, formula }: NotedCell): string {
  const shown = value === '' ? 'blank' : cellWords(value);
  return `${address}: ${shown}${formula && `, formula ${formula}`}`;
}

/** The line below the sheet: what is wrong in the selected cell; for screen readers also what it holds. */
export function StatusLine({ spreadsheet, busy, notes }: StatusLineProps) {
  const [cell, setCell] = useState<NotedCell>();
  useEffect(() => spreadsheet?.onSelected(setCell), [spreadsheet]);

  const wrong = typeof cell?.value === 'object' ? cell.value : undefined;
  return (
    <footer className={wrong ? 'status wrong' : 'status'}>
      <div role="status" aria-live="polite" className="sentence">
        {wrong ? (
          <>
            <strong>
              {cell!.address} {wrong.error}
            </strong>{' '}
            {wrong.sentence ??
              'This error came in from a cell the formula refers to, or from a function of the spreadsheet itself.'}
          </>
        ) : (
          <span className="unseen">{cell && spoken(cell)}</span>
        )}
      </div>
      {!wrong && notes.length > 0 && <span className="note">{notes.join(' ')}</span>}
      {!wrong && (
        <span className="hint">
          Select or point at a cell that shows an error to read what is wrong and what to do. F6 goes to the task pane and the
          buttons.
        </span>
      )}
      <span className="busy" role="status">
        {busy}
      </span>
    </footer>
  );
}
