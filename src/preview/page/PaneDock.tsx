import { useState } from 'react';
import type { Workbook } from '../../host/workbook';
import type { FunctionMetadata } from '../host/functionMetadata';

interface PaneDockProps {
  readonly workbook: Workbook | undefined;
  readonly functions: readonly FunctionMetadata[];
}

/** The task pane at the right of the sheet, where Excel docks it; it can be put away. */
export function PaneDock({ workbook, functions }: PaneDockProps) {
  const [open, setOpen] = useState(true);
  return (
    <aside className={open ? 'dock' : 'dock closed'} aria-label="Task pane">
      <button type="button" className="toggle" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'Hide task pane' : 'Task pane'}
      </button>
      {open && workbook && (
        <div className="pane">
          <p>{functions.length} worksheet functions are ready: type =HOSE. in a cell.</p>
        </div>
      )}
    </aside>
  );
}
