import { useState } from 'react';
import type { Wanted } from '../../taskpane/app/wanted';
import type { Workbook } from '../../workbook/workbook';
import { showStep } from '../tour/showStep';
import type { Tour } from '../tour/tour';
import { errorSentence } from '../../workbook/errorSentence';

interface TourState {
  readonly isOpen: boolean;
  readonly tour: Tour | undefined;
  readonly step: number;
  readonly busy: boolean;
  /** What the step wants to see in the pane. */
  readonly wanted: Wanted | undefined;
}

const CLOSED: TourState = { isOpen: false, tour: undefined, step: 0, busy: false, wanted: undefined };

interface TourHost {
  /** Opens a fresh copy of a sample. */
  readonly openSample: (file: string) => Promise<boolean>;
  /** Does what the tour writes, so that it counts for no change of the person's. */
  readonly uncounted: (work: () => Promise<void>) => Promise<void>;
  readonly workbook: () => Workbook | undefined;
  readonly onProblem: (sentence: string) => void;
}

/** Where the tour stands, and what moves it on. */
export function useTour({ openSample, uncounted, workbook, onProblem }: TourHost) {
  const [state, setState] = useState(CLOSED);

  const goTo = async (tour: Tour, step: number, prepare?: () => Promise<boolean>) => {
    const before = state;
    setState({ isOpen: true, tour, step, busy: true, wanted: undefined });
    try {
      if (prepare && !(await prepare())) return setState(before);
      await uncounted(() => showStep(workbook()!, tour.steps[step]!));
    } catch (error) {
      onProblem(`The tour cannot show this step: ${errorSentence(error)}`);
    }
    const { place, strip = 'folded' } = tour.steps[step]!;
    setState({ isOpen: true, tour, step, busy: false, wanted: { place, strip } });
  };

  return {
    ...state,
    open: () => setState({ ...CLOSED, isOpen: true }),
    close: () => setState(CLOSED),
    start: (tour: Tour) => void goTo(tour, 0, () => openSample(tour.sample)),
    show: (step: number) => state.tour && void goTo(state.tour, step),
  };
}
