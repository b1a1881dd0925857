import { makeStyles, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { CardsView } from '../cards/CardsView';
import type { PanelProps } from '../panelProps';
import { TabRow } from '../TabRow';
import { TagsView } from '../tags/TagsView';
import { CutPlanView } from './CutPlanView';
import { cutPlanSolver } from './cutPlanSolver';

const useStyles = makeStyles({ panel: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalM } });

const VIEWS = [
  { id: 'plan', title: 'Cut list' },
  { id: 'cards', title: 'Bench cards' },
  { id: 'tags', title: 'Tags' },
] as const;
type View = (typeof VIEWS)[number]['id'];

/** From job lines to the bench: what to cut from which reel, cards to work from, tags. */
export function CutsPanel({ workbook }: PanelProps) {
  const styles = useStyles();
  const [view, setView] = useState<View>('plan');
  return (
    <div className={styles.panel}>
      <TabRow label="Cuts" tabs={VIEWS} chosen={view} onChoose={id => setView(id)} />
      <div hidden={view !== 'plan'}>
        <CutPlanView workbook={workbook} solve={cutPlanSolver} />
      </div>
      {view === 'cards' && <CardsView workbook={workbook} />}
      {view === 'tags' && <TagsView workbook={workbook} />}
    </div>
  );
}
