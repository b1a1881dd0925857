import type { ComponentType } from 'react';
import type { FunctionMetadata } from '../workbook/functionMetadata';
import type { Workbook } from '../workbook/workbook';

/** What every panel is given. */
export interface PanelProps {
  readonly workbook: Workbook;
  /** The functions of functions.json. */
  readonly functions: readonly FunctionMetadata[];
}

/** One panel of the pane, or one view of a panel. */
export interface Panel {
  readonly id: string;
  readonly title: string;
  readonly View: ComponentType<PanelProps>;
}
