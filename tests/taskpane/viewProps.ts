import { hostServices } from '../../src/taskpane/app/hostServices';
import type { ViewProps } from '../../src/taskpane/controls/viewProps';
import type { Workbook } from '../../src/workbook/workbook';

/** What a view is given when it is shown by itself, without the pane around it. */
export const viewProps = (workbook: Workbook): ViewProps => ({
  workbook,
  functions: [],
  services: hostServices,
  goTo: () => undefined,
});
