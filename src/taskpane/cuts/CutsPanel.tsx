import { makeStyles, Tab, TabList, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { CardsView } from '../cards/CardsView';
import type { PanelProps } from '../panelProps';
import { TagsView } from '../tags/TagsView';
import { CutPlanView } from './CutPlanView';
import { cutPlanSolver } from './cutPlanSolver';

const useStyles = makeStyles({ panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM } });

const VIEWS = { plan: 'Cut list', cards: 'Bench cards', tags: 'Tags' } as const;
type View = keyof typeof VIEWS;

/** From job lines to the bench: what to cut from which reel, cards to work from, tags. */
export function CutsPanel({ workbook }: PanelProps) {
  const styles = useStyles();
  const [view, setView] = useState<View>('plan');
  return (
    <div className={styles.panel}>
      <TabList
        size="small"
        appearance="subtle"
        selectedValue={view}
        onTabSelect={(_, { value }) => setView(value as View)}
        aria-label="Cuts"
      >
        {(Object.keys(VIEWS) as View[]).map(id => (
          <Tab key={id} value={id}>
            {VIEWS[id]}
          </Tab>
        ))}
      </TabList>
      <div hidden={view !== 'plan'}>
        <CutPlanView workbook={workbook} solve={cutPlanSolver} />
      </div>
      {view === 'cards' && <CardsView workbook={workbook} />}
      {view === 'tags' && <TagsView workbook={workbook} />}
    </div>
  );
}
