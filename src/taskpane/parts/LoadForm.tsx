import { Button, makeStyles, MessageBar, MessageBarBody, MessageBarTitle, tokens } from '@fluentui/react-components';
import { useCallback, useEffect, useState } from 'react';
import type { TableName } from '../../core/catalogue/tables/catalogueTables';
import type { Workbook } from '../../workbook/workbook';
import type { WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import { useFocusWhenLost } from '../controls/useFocusWhenLost';
import { HeadingFields } from './HeadingFields';
import { LoadResult } from './LoadResult';
import { useRememberedHeadings } from './rememberedHeadings';
import { ReadingBar, SourcePicker } from './SourcePicker';
import { TableList } from './TableList';
import type { PartsFileReader, PickedFile } from '../../sheets/parts/tablesFromFiles';
import { useLoad } from './useLoad';
import { useCatalogueWriting } from './useCatalogueWriting';
import { CatalogueWritingBar } from './CatalogueWritingBar';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, ':focus': { outline: 'none' } },
});

interface Props {
  readonly workbook: Workbook;
  readonly readPartsFile: PartsFileReader;
  readonly standing: WorkbookCatalogue | undefined;
  /** Reads the workbook's catalogue again. */
  readonly onAgain: () => void;
  /** The office's catalogue, to be looked at; a new object is a new wish. */
  readonly looked: LookedAt | undefined;
  /** It was taken; the handle that came of it. */
  readonly onTaken: (handle: string) => void;
}

/** A file that is loaded in place of what was loaded before. */
export interface LookedAt {
  readonly file: PickedFile;
  /** Its tables that are left alone unless somebody says otherwise. */
  readonly spared: ReadonlySet<TableName>;
}

function Refusals({ refusals }: { readonly refusals: readonly string[] }) {
  if (refusals.length === 0) return null;
  return (
    <MessageBar intent="error" layout="multiline" role="alert">
      <MessageBarBody>
        <MessageBarTitle>Not loaded</MessageBarTitle>
        {refusals.map(sentence => (
          <div key={sentence}>{sentence}</div>
        ))}
      </MessageBarBody>
    </MessageBar>
  );
}

/** From files or ranges to the catalogue of the workbook: load, map, compare, write. */
export function LoadForm({ workbook, readPartsFile, standing, onAgain, looked, onTaken }: Props) {
  const styles = useStyles();
  const [maps, map] = useRememberedHeadings();
  const { tables, taken, refusals, reading, chosen, result, addFiles, addRange, take, cancel, clear } = useLoad(
    workbook,
    readPartsFile,
    standing,
    maps,
  );
  const [left, setLeft] = useState<LookedAt>();
  const isOffices = looked !== undefined && looked !== left;
  const onWritten = useCallback(
    (handle: string) => {
      if (isOffices) onTaken(handle);
      clear();
      onAgain();
    },
    [isOffices, onTaken, clear, onAgain],
  );
  const { writing, write, cancel: stopWriting, forget } = useCatalogueWriting(workbook, onWritten, onAgain);
  // The button that was pressed goes away when all is written or begun anew.
  const view = useFocusWhenLost<HTMLDivElement>(`${tables.length} ${writing.status}`);
  useEffect(() => {
    if (!looked) return;
    forget();
    clear();
    void addFiles([looked.file], looked.spared);
  }, [looked, forget, clear, addFiles]);
  const isBusy = reading !== undefined || writing.status === 'writing';
  /** Tables of the office and others are not mixed. */
  const own = () => {
    forget();
    if (isOffices) clear();
    setLeft(looked);
  };
  const pick = (files: readonly PickedFile[]) => {
    if (files.length === 0 || isBusy) return;
    own();
    void addFiles(files);
  };
  const pickRange = (sheet: string | undefined) => {
    own();
    void addRange(sheet);
  };
  return (
    <div className={styles.view} ref={view} tabIndex={-1} role="group" aria-label="Load parts data">
      <SourcePicker workbook={workbook} isBusy={isBusy} onFiles={pick} onRange={pickRange} />
      {reading && <ReadingBar reading={reading} onCancel={cancel} />}
      <Refusals refusals={refusals} />
      <CatalogueWritingBar workbook={workbook} writing={writing} onCancel={stopWriting} />
      <TableList tables={tables} taken={taken} onTake={take} />
      <HeadingFields chosen={chosen} maps={maps} onMap={map} />
      {result && !result.catalogue && (
        <MessageBar intent="warning" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>No catalogue yet</MessageBarTitle>
            {result.reason}
          </MessageBarBody>
        </MessageBar>
      )}
      {result?.catalogue && (
        <LoadResult
          workbook={workbook}
          standing={standing}
          result={result}
          isBusy={isBusy}
          wanted={isOffices ? looked : undefined}
          onWrite={agreed => void write(standing, result, agreed)}
        />
      )}
      {tables.length > 0 && (
        <Button disabledFocusable={isBusy} onClick={clear}>
          Start over
        </Button>
      )}
    </div>
  );
}
