import { makeStyles, tokens } from '@fluentui/react-components';
import { useEffect, useRef } from 'react';
import type { WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import type { LoadedCatalogue } from '../../sheets/parts/loadedCatalogue';
import type { Workbook } from '../../workbook/workbook';
import { CompareView } from './CompareView';
import { PlacedProblems } from './PlacedProblems';
import { RemovedInUseBar } from './RemovedInUseBar';
import { usePartsPlan } from './usePartsPlan';
import { useRemovedInUse } from './useRemovedInUse';
import { WriteView } from './WriteView';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, ':focus': { outline: 'none' } },
});

interface Props {
  readonly workbook: Workbook;
  readonly standing: WorkbookCatalogue | undefined;
  /** With a catalogue. */
  readonly result: LoadedCatalogue;
  readonly isBusy: boolean;
  /** Somebody wants to look at this and at nothing else: it is scrolled to. A new object is a new wish. */
  readonly wanted: object | undefined;
  readonly onWrite: (agreed: readonly string[]) => void;
}

/** What the loaded tables would make of the workbook's catalogue, row by row, and the button that writes it. */
export function LoadResult({ workbook, standing, result, isBusy, wanted, onWrite }: Props) {
  const styles = useStyles();
  const view = useRef<HTMLDivElement>(null);
  const planned = usePartsPlan(workbook, standing, result);
  const removed = useRemovedInUse(workbook, standing, result);
  useEffect(() => {
    if (wanted) view.current?.focus({ preventScroll: true });
  }, [wanted]);
  // Again once it is planned: until then there is too little below it to scroll to.
  useEffect(() => {
    if (wanted) view.current?.scrollIntoView?.();
  }, [wanted, planned.status]);
  const { problems, notes, changes, unitChange, chosen } = result;
  const catalogue = result.catalogue!;
  return (
    <div className={styles.view} ref={view} tabIndex={-1} role="group" aria-label="What loading changes">
      <PlacedProblems
        key={catalogue.digest}
        workbook={workbook}
        title={`${catalogue.leftOutRows} ${catalogue.leftOutRows === 1 ? 'row' : 'rows'} would be left out`}
        problems={problems}
      />
      <PlacedProblems key={`${catalogue.digest} notes`} workbook={workbook} title="Used, but check these" problems={notes} />
      <RemovedInUseBar workbook={workbook} removed={removed} />
      {changes && <CompareView changes={changes} unitChange={unitChange} />}
      <WriteView
        planned={planned}
        unconfirmed={chosen.flatMap(each => each.unconfirmed)}
        result={result}
        isBusy={isBusy}
        isReplacing={standing !== undefined}
        onWrite={onWrite}
      />
    </div>
  );
}
