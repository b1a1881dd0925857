import { makeStyles, tokens } from '@fluentui/react-components';
import { useCallback } from 'react';
import type { ViewProps } from '../controls/viewProps';
import { LoadForm } from './LoadForm';
import { CatalogueCard } from './CatalogueCard';
import { useWorkbookCatalogue } from './useWorkbookCatalogue';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, '& h2, & h3': { margin: 0 } },
});

/** The workbook's catalogue as it is now, and below it the way to load another. */
export function LoadView({ workbook, services }: ViewProps) {
  const styles = useStyles();
  const [standing, again] = useWorkbookCatalogue(workbook);
  const reread = useCallback(() => void again(), [again]);
  return (
    <div className={styles.view}>
      <CatalogueCard workbook={workbook} standing={standing} onAgain={reread} />
      {standing.status !== 'loading' && (
        <LoadForm
          workbook={workbook}
          readPartsFile={services.readPartsFile}
          standing={standing.status === 'ready' ? standing.found : undefined}
          onAgain={reread}
        />
      )}
    </div>
  );
}
