import type { Workbook } from '../../workbook/workbook';
import type { BenchCard } from './benchCard';

/** Where a host has a workbook to look at. */
const example = (host: Workbook['host']) =>
  host === 'try-out' ? ' On this page, the sample Catalogue has them: its sheets Jobs and Week.' : '';

/** Where the ratings come from that no line has. */
export function noPressure(host: Workbook['host']): string {
  return `No selected line has a working pressure: there are no tags to make. It comes from a column Working pressure or from a Catalogue (Parts › Load).${example(host)}`;
}

/** What to do where no line has crimp data, so that every card says STOP; undefined where one has them. */
export function noCrimpData(cards: readonly BenchCard[], host: Workbook['host']): string | undefined {
  if (cards.some(({ ends }) => ends.some(({ diameter }) => diameter !== undefined))) return undefined;
  return `Every card says STOP, because no line has crimp data. They come from columns of the sheet or from a Catalogue (Parts › Load).${example(host)}`;
}
