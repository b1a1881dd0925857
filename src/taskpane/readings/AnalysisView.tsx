import { Body1, MessageBar, MessageBarBody, MessageBarTitle, Spinner } from '@fluentui/react-components';
import type { PanelProps } from '../panels';
import { catalogueTarget } from './catalogueTarget';
import { readMeasurements } from './readMeasurements';
import { useMeasurements } from './useMeasurements';

/** What the readings around the selection say of machine and settings. */
export function AnalysisView({ workbook }: PanelProps) {
  const view = useMeasurements(workbook);
  if (view.status === 'loading') return <Spinner label="Reading the measurements" />;
  if (view.status === 'failed') {
    return (
      <MessageBar intent="error" layout="multiline">
        <MessageBarBody>
          <MessageBarTitle>The measurements cannot be read</MessageBarTitle>
          {view.reason}
        </MessageBarBody>
      </MessageBar>
    );
  }
  if (view.status === 'none') {
    return (
      <Body1>No measurements here. Select a cell among your caliper readings: a row a crimp, four readings side by side.</Body1>
    );
  }
  const { used, table, proposed, unit, catalogue, picked } = view;
  const setUp = catalogue && catalogueTarget(catalogue, unit);
  const { crimps, problems } = readMeasurements(used, table, proposed, { unit, readingsACrimp: 4, setUp, picked });
  return (
    <Body1>
      {crimps.length} crimps read, {problems.length} rows cannot be used.
    </Body1>
  );
}
