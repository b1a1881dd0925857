import { useRef, useState } from 'react';
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
  const latest = useRef(0);

  const goTo = async (tour: Tour, step: number, prepare?: () => Promise<boolean>) => {
    const before = state;
    const own = ++latest.current;
    // Whoever closes the tour, or opens something else, while a step is prepared has done with it.
    const isOver = () => own !== latest.current;
    setState({ isOpen: true, tour, step, busy: true, wanted: undefined });
    try {
      const isReady = !prepare || (await prepare());
      if (isOver()) return;
      if (!isReady) return setState(before);
      await uncounted(() => showStep(workbook()!, tour.steps[step]!));
    } catch (error) {
      if (isOver()) return;
      onProblem(`The tour cannot show this step: ${errorSentence(error)}`);
    }
    if (isOver()) return;
    const { place, strip = 'folded' } = tour.steps[step]!;
    setState({ isOpen: true, tour, step, busy: false, wanted: { place, strip } });
  };

  return {
    ...state,
    open: () => setState({ ...CLOSED, isOpen: true }),
    close: () => {
      latest.current++;
      setState(CLOSED);
    },
    start: (tour: Tour) => void goTo(tour, 0, () => openSample(tour.sample)),
    show: (step: number) => state.tour && void goTo(state.tour, step),
  };
}
