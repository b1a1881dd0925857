import type { ComponentType } from 'react';
import type { FunctionMetadata } from '../../workbook/functionMetadata';
import type { PlanSolver } from '../../sheets/cutlist/planSolver';
import type { PartsFileReader } from '../../sheets/parts/tablesFromFiles';
import type { CopiedWorkbook } from '../../workbook/copiedWorkbook';
import type { OfficeFileAsker } from '../../workbook/officeFile';
import type { Workbook } from '../../workbook/workbook';

/** The sample workbook to begin with, a file beside the pane. */
export interface SampleFile {
  /** Its address, for a browser. */
  readonly address: () => string;
  /** Whether the host opens it as a new workbook; asked when it is offered, since the host is known only then. */
  readonly canOpen: () => boolean;
  /** Opens it as a new workbook, beside this one. */
  readonly open: () => Promise<void>;
}

/** What the pane asks its host for, beside the workbook: the page that opens the pane passes it in. */
export interface HostServices {
  /** Plans cuts: in a worker where the host has them. */
  readonly solve: PlanSolver;
  /** Cut plans that it works on at the same time. */
  readonly plansAtOnce: number;
  /** Reads a parts file that somebody picked. */
  readonly readPartsFile: PartsFileReader;
  /** Asks the add-in's own host for the office's catalogue. */
  readonly officeFile: OfficeFileAsker;
  /** Whether there is a print window; asked when it is shown, since the host is known only then. */
  readonly canPrint: () => boolean;
  /** Opens the print window for a page of our own; gives false where there is none, or the host does not open it. */
  readonly print: (html: string) => Promise<boolean>;
  /** Hands a copy to the downloads as an .xlsx file; gives false, and does nothing, where a page cannot (Excel for Mac). */
  readonly downloadCopy: (copy: CopiedWorkbook, fileName: string) => Promise<boolean>;
  /** Whether there are downloads; asked when it is shown, since the host is known only then. */
  readonly canDownload: () => boolean;
  readonly sample: SampleFile;
}

/** The text of a tag that was scanned or typed outside the view; a new object is a new scan. */
export interface ScannedTag {
  readonly text: string;
}

/** The wish to look at the office's catalogue; a new object is a new wish. */
export type OfficeLook = object;

/** What every view is given. */
export interface ViewProps {
  readonly workbook: Workbook;
  /** The functions of functions.json. */
  readonly functions: readonly FunctionMetadata[];
  readonly services: HostServices;
  /** Opens another view by its place: `parts/load`. A place that the pane does not have changes nothing. */
  readonly goTo: (place: string) => void;
  /** The last tag that was scanned in the strip of the pane: Entry shows its piece. */
  readonly scanned?: ScannedTag | undefined;
  /** Somebody wants to look at what the office's catalogue changes: Load shows it. */
  readonly officeLook?: OfficeLook | undefined;
}

/** One view of the pane; a view that two tabs show has one id, and is one view. */
export interface View {
  readonly id: string;
  readonly title: string;
  /** It reads parts data: of a workbook with several catalogues it is asked above the view which one counts. */
  readonly usesCatalogue?: boolean;
  readonly View: ComponentType<ViewProps>;
}
