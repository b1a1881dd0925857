import { useId, useRef } from 'react';
import { EMPTY_TITLE } from './emptyWorkbook';
import { samples, type Sample } from './samples';

/** Value of the choice that is no file. */
const EMPTY = 'empty';

interface TopBarProps {
  readonly title: string;
  readonly ready: boolean;
  onSample(sample: Sample): void;
  onEmpty(): void;
  onFile(file: File): void;
  onSave(): void;
  onTour(): void;
}

/** Says what this page is, and opens and saves workbooks. */
export function TopBar({ title, ready, onSample, onEmpty, onFile, onSave, onTour }: TopBarProps) {
  const picker = useRef<HTMLInputElement>(null);
  const sampleId = useId();
  return (
    <header className="top">
      <div className="what">
        <h1>Try-out sheet – not Excel</h1>
        <p>
          For people without Excel: the same worksheet functions, in an open-source spreadsheet. Nothing leaves this computer.
        </p>
      </div>
      <span className="title" title={title}>
        {title}
      </span>
      {samples.length > 0 && (
        <button type="button" disabled={!ready} onClick={onTour}>
          Take the tour
        </button>
      )}
      <label htmlFor={sampleId} className="sample">
        Sample
        <select
          id={sampleId}
          value={title === EMPTY_TITLE ? EMPTY : (samples.find(sample => sample.title === title)?.file ?? '')}
          disabled={!ready}
          onChange={event => {
            const { value } = event.target;
            const sample = samples.find(({ file }) => file === value);
            if (sample) onSample(sample);
            else if (value === EMPTY) onEmpty();
          }}
        >
          <option value="" disabled hidden>
            choose …
          </option>
          {samples.map(sample => (
            <option key={sample.file} value={sample.file}>
              {sample.title}
            </option>
          ))}
          <option value={EMPTY}>{EMPTY_TITLE}</option>
        </select>
      </label>
      <input
        ref={picker}
        type="file"
        accept=".xlsx"
        aria-label="Workbook to open"
        hidden
        onChange={event => {
          const [file] = event.target.files ?? [];
          if (file) onFile(file);
          event.target.value = '';
        }}
      />
      <button
        type="button"
        onClick={() => picker.current?.click()}
        title="Open an .xlsx workbook, or drop one anywhere on this page"
      >
        Open .xlsx …
      </button>
      <button type="button" disabled={!ready} onClick={onSave}>
        Save as .xlsx
      </button>
    </header>
  );
}
