import type { ComponentType } from 'react';
import type { FunctionMetadata } from '../../workbook/functionMetadata';
import type { PlanSolver } from '../../sheets/cutlist/planSolver';
import type { PartsFileReader } from '../../sheets/parts/tablesFromFiles';
import type { Workbook } from '../../workbook/workbook';

/** What the pane asks its host for, beside the workbook: the page that opens the pane passes it in. */
export interface HostServices {
  /** Plans cuts: in a worker where the host has them. */
  readonly solve: PlanSolver;
  /** Reads a parts file that somebody picked. */
  readonly readPartsFile: PartsFileReader;
}

/** What every panel is given. */
export interface PanelProps {
  readonly workbook: Workbook;
  /** The functions of functions.json. */
  readonly functions: readonly FunctionMetadata[];
  readonly services: HostServices;
}

/** One panel of the pane, or one view of a panel. */
export interface Panel {
  readonly id: string;
  readonly title: string;
  readonly View: ComponentType<PanelProps>;
}
