import { CardsView } from './CardsView';
import type { Panel, PanelProps } from '../controls/panelProps';
import { TagsView } from './TagsView';
import { ViewTabs } from '../controls/ViewTabs';
import { CutPlanView } from './CutPlanView';

const VIEWS: readonly Panel[] = [
  { id: 'plan', title: 'Cut list', View: props => <CutPlanView {...props} solve={props.services.solve} /> },
  { id: 'cards', title: 'Bench cards', View: CardsView },
  { id: 'tags', title: 'Tags', View: TagsView },
];

/** From job lines to the bench: what to cut from which reel, cards to work from, tags. */
export const CutsPanel = (props: PanelProps) => <ViewTabs label="Cuts" views={VIEWS} {...props} />;
