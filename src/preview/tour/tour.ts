import type { Change, RangeAddress } from '../../workbook/workbook';

/** One step of a tour: what is shown, what is said about it, and what the step itself enters into the sheet. */
export interface TourStep {
  readonly title: string;
  /** Two or three plain sentences. */
  readonly text: string;
  /** What is selected. */
  readonly select: RangeAddress;
  /** Place of the task pane that is opened beside it: `quote/duty`. */
  readonly place: string;
  /** Whether the strip about the selected cell is unfolded; folded where nothing is said. */
  readonly strip?: 'open';
  /** What the step enters; nothing on most steps. */
  readonly changes?: readonly Change[];
}

/** A job of one person from start to end, in five steps, on one sample workbook. */
export interface Tour {
  readonly id: string;
  readonly person: string;
  readonly task: string;
  /** File name of the sample. */
  readonly sample: string;
  readonly steps: readonly [TourStep, TourStep, TourStep, TourStep, TourStep];
}
