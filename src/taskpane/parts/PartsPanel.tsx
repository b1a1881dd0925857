import { Body1, makeStyles, tokens } from '@fluentui/react-components';
import { useCallback, useState } from 'react';
import type { PanelProps } from '../controls/panelProps';
import { TabRow } from '../controls/TabRow';
import { LoadView } from './LoadView';
import { SearchView } from './SearchView';
import { StandingCard } from './StandingCard';
import { useStanding } from './useStanding';

const useStyles = makeStyles({
  panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM, '& h2, & h3': { margin: 0 } },
});

const VIEWS = [
  { id: 'search', title: 'Search' },
  { id: 'load', title: 'Load' },
] as const;
type View = (typeof VIEWS)[number]['id'];

/** The workshop's parts data: what stands in the workbook, finding parts in it, loading others. */
export function PartsPanel({ workbook, services }: PanelProps) {
  const styles = useStyles();
  const [standing, again] = useStanding(workbook);
  const reread = useCallback(() => void again(), [again]);
  const [chosen, setChosen] = useState<View>();
  // Who has begun to load stays there when a catalogue comes to stand.
  const begin = useCallback(() => setChosen('load'), []);
  const found = standing.status === 'ready' ? standing.found : undefined;
  const view: View = chosen ?? (standing.status === 'none' ? 'load' : 'search');
  return (
    <div className={styles.panel}>
      <StandingCard workbook={workbook} standing={standing} onAgain={reread} />
      <TabRow label="Parts" tabs={VIEWS} chosen={view} onChoose={id => setChosen(id)} />
      {view === 'search' && found?.catalogue && <SearchView workbook={workbook} standing={found} catalogue={found.catalogue} />}
      {view === 'search' && standing.status !== 'loading' && !found?.catalogue && (
        <Body1>There is no catalogue to search yet. Load one.</Body1>
      )}
      <div hidden={view !== 'load'}>
        {standing.status !== 'loading' && (
          <LoadView
            workbook={workbook}
            readPartsFile={services.readPartsFile}
            standing={found}
            onAgain={reread}
            onBegin={begin}
          />
        )}
      </div>
    </div>
  );
}
