import { CardsView } from '../cards/CardsView';
import type { Panel, PanelProps } from '../panelProps';
import { TagsView } from '../tags/TagsView';
import { ViewTabs } from '../ViewTabs';
import { CutPlanView } from './CutPlanView';
import { cutPlanSolver } from './cutPlanSolver';

const VIEWS: readonly Panel[] = [
  { id: 'plan', title: 'Cut list', View: props => <CutPlanView {...props} solve={cutPlanSolver} /> },
  { id: 'cards', title: 'Bench cards', View: CardsView },
  { id: 'tags', title: 'Tags', View: TagsView },
];

/** From job lines to the bench: what to cut from which reel, cards to work from, tags. */
export const CutsPanel = (props: PanelProps) => <ViewTabs label="Cuts" views={VIEWS} {...props} />;
