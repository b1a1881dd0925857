import type { MachineReadings } from './analyseReadings';
import { epochText } from './countedCrimps';
import { dayText } from './sinceText';

/** What the picture over time shows, in sentences. */
export function timeText({ cause, counts }: Pick<MachineReadings, 'cause' | 'counts'>): string {
  const { changes, since } = cause;
  // A drift from the first crimp on parts no crimps from others, and is a change all the same.
  const drift = since?.isRising && !changes.includes(since.crimp) ? since : undefined;
  const said = [
    ...(drift ? [`The machine has drifted since ${dayText(drift.crimp)}.`] : []),
    ...(changes.length > 0 ? [`The machine changed on ${changes.map(dayText).join(' and ')}.`] : []),
  ];
  const from = counts.epoch && !counts.epoch.isBlind ? [`Those count that were made ${epochText(counts.epoch)}.`] : [];
  return [...(said.length > 0 ? said : ['No change of the machine was found.']), ...from, 'Thick: machine offset.'].join(' ');
}
