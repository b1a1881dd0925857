import { Button, makeStyles, tokens } from '@fluentui/react-components';
import { useCallback } from 'react';
import type { ViewProps } from '../controls/viewProps';
import { PartFinder } from './PartFinder';
import { CatalogueCard } from './CatalogueCard';
import { useWorkbookCatalogue } from './useWorkbookCatalogue';

const useStyles = makeStyles({
  view: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, '& h2, & h3': { margin: 0 } },
  start: { alignSelf: 'flex-start' },
});

/** Finds parts of this workbook's catalogue and inserts them; without one, leads to where it is loaded. */
export function SearchView({ workbook, goTo }: ViewProps) {
  const styles = useStyles();
  const [standing, again] = useWorkbookCatalogue(workbook);
  const reread = useCallback(() => void again(), [again]);
  const found = standing.status === 'ready' ? standing.found : undefined;
  return (
    <div className={styles.view}>
      <CatalogueCard workbook={workbook} standing={standing} onAgain={reread} />
      {found?.catalogue && <PartFinder workbook={workbook} standing={found} catalogue={found.catalogue} goTo={goTo} />}
      {standing.status !== 'loading' && !found?.catalogue && (
        <Button className={styles.start} appearance="primary" onClick={() => goTo('parts/load')}>
          Load parts data
        </Button>
      )}
    </div>
  );
}
