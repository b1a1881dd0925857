import type { PanelProps } from '../controls/panelProps';
import { ViewTabs } from '../controls/ViewTabs';
import { views } from './views';

/** Caliper readings: what they say of machine and settings, entry at the bench, records. */
export const ReadingsPanel = (props: PanelProps) => <ViewTabs label="Readings" views={views} {...props} />;
