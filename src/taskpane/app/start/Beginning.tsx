import type { ReactNode } from 'react';
import type { SampleFile } from '../../controls/viewProps';
import { StartView } from './StartView';
import type { Start } from './useStart';
import { YourWork } from './YourWork';

interface Props {
  readonly start: Start;
  readonly sample: SampleFile;
  readonly goTo: (place: string) => void;
  /** The views. */
  readonly children: ReactNode;
}

/** The views of the pane, with what the first minute puts above or before them. */
export function Beginning({ start, sample, goTo, children }: Props) {
  const { stage, person, choose, dismiss } = start;
  const isAsking = stage === 'question';
  return (
    <>
      {isAsking && <StartView person={person} sample={sample} onChoose={choose} onOwnSheet={({ place }) => goTo(place)} />}
      {stage === 'line' && (
        <YourWork
          onChoose={chosen => {
            choose(chosen);
            goTo(chosen.place);
          }}
          onDismiss={dismiss}
        />
      )}
      <div hidden={isAsking}>{children}</div>
    </>
  );
}
