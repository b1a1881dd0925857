import { Body1, Button, Field, makeStyles, ProgressBar, Select, tokens } from '@fluentui/react-components';
import { useEffect, useRef, useState, type DragEvent, type ReactNode } from 'react';
import type { Workbook } from '../../workbook/workbook';
import type { PickedFile } from '../../sheets/parts/tablesFromFiles';
import type { Reading } from './useLoad';

const useStyles = makeStyles({
  drop: {
    display: 'flex',
    flexDirection: 'column',
    alignItems: 'center',
    textAlign: 'center',
    gap: tokens.spacingVerticalS,
    padding: tokens.spacingVerticalM,
    border: `2px dashed ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
  },
  over: { border: `2px solid ${tokens.colorBrandStroke1}` },
  row: { display: 'flex', flexWrap: 'wrap', alignItems: 'end', gap: tokens.spacingHorizontalS },
  field: { minWidth: '140px', flexGrow: 1 },
  reading: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalXS, overflowWrap: 'anywhere' },
});

const pickedFiles = (files: FileList | null): readonly PickedFile[] =>
  [...(files ?? [])].map(file => ({ name: file.name, bytes: async () => new Uint8Array(await file.arrayBuffer()) }));

interface DropProps {
  readonly children: ReactNode;
  readonly onFiles: (files: readonly PickedFile[]) => void;
}

/** Takes dropped files; the page around it must not take them as well. */
function DropZone({ children, onFiles }: DropProps) {
  const styles = useStyles();
  const [isOver, setIsOver] = useState(false);
  const own = (dragged: DragEvent, over: boolean) => {
    dragged.preventDefault();
    dragged.stopPropagation();
    setIsOver(over);
  };
  return (
    <div
      className={isOver ? `${styles.drop} ${styles.over}` : styles.drop}
      onDragOver={dragged => own(dragged, true)}
      onDragLeave={dragged => own(dragged, false)}
      onDrop={dropped => {
        own(dropped, false);
        onFiles(pickedFiles(dropped.dataTransfer.files));
      }}
    >
      {children}
    </div>
  );
}

/** How far the reading of files is, and how to stop it. */
export function ReadingBar({ reading, onCancel }: { readonly reading: Reading; readonly onCancel: () => void }) {
  const styles = useStyles();
  const said = reading.isStopping
    ? `Stopping. An .xlsx is unpacked in one go: ${reading.name} is dropped as soon as that is done.`
    : `Reading ${reading.name}`;
  return (
    <div className={styles.reading} role="status">
      <Field validationMessage={said} validationState="none">
        <ProgressBar {...(reading.share !== undefined && { value: reading.share })} aria-label={`Reading ${reading.name}`} />
      </Field>
      <Button size="small" disabledFocusable={reading.isStopping ?? false} onClick={onCancel}>
        Stop reading
      </Button>
    </div>
  );
}

interface Props {
  readonly workbook: Workbook;
  readonly isBusy: boolean;
  readonly onFiles: (files: readonly PickedFile[]) => void;
  readonly onRange: (sheet: string | undefined) => void;
}

/** Where tables come from: files that are dropped or chosen, sheets and ranges of this workbook. */
export function SourcePicker({ workbook, isBusy, onFiles, onRange }: Props) {
  const styles = useStyles();
  const input = useRef<HTMLInputElement>(null);
  const [sheets, setSheets] = useState<readonly string[]>([]);
  const [sheet, setSheet] = useState('');
  useEffect(() => {
    const look = async () => {
      const now = await workbook.sheets().catch(() => []);
      setSheets(old => (old.join('\n') === now.join('\n') ? old : now));
    };
    void look();
    return workbook.onSelection(() => void look());
  }, [workbook]);
  return (
    <>
      <DropZone onFiles={onFiles}>
        <Body1>Drop files here: .xlsx (one table a sheet) or .csv (one table a file).</Body1>
        <Button disabledFocusable={isBusy} onClick={() => input.current!.click()}>
          Choose files …
        </Button>
        <input
          ref={input}
          type="file"
          multiple
          hidden
          accept=".xlsx,.csv,.txt,.tsv"
          aria-label="Files of parts data"
          onChange={({ target }) => {
            onFiles(pickedFiles(target.files));
            // So that the same file can be chosen again after it was corrected.
            target.value = '';
          }}
        />
      </DropZone>
      <div className={styles.row}>
        <Field className={styles.field} label="Or a table of this workbook" size="small">
          <Select size="small" value={sheet} onChange={(_, { value }) => setSheet(value)}>
            <option value="">the selected range</option>
            {sheets.map(name => (
              <option key={name} value={name}>
                sheet {name}
              </option>
            ))}
          </Select>
        </Field>
        <Button size="small" disabledFocusable={isBusy} onClick={() => onRange(sheet === '' ? undefined : sheet)}>
          Add
        </Button>
      </div>
    </>
  );
}
