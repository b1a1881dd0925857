import type { Catalogue } from '../../core/catalogue/catalogue';
import { trialDial, type TrialDial } from '../../core/catalogue/trialDial';
import { TradeError } from '../../core/tradeError';
import type { CrimpRow } from './crimpRow';

/** A dial to try on one trial piece, in a sentence; without a dial where there is nothing to go by. */
export interface TrialPiece {
  readonly dial: string | undefined;
  readonly sentence: string;
}

const BASES: Readonly<Record<TrialDial['basis'], string>> = {
  RECORD: 'recorded on this machine',
  CATALOGUE: 'the catalogue’s dial and this machine’s records',
  'SAME DIE': 'this machine’s records with the same die',
};

const numberText = (value: number) => value.toFixed(1);

/** What to try where neither the machine nor the catalogue has a dial for a crimp; undefined where one is known or nothing names the pair. */
export function trialPiece(catalogue: Catalogue | undefined, row: CrimpRow): TrialPiece | undefined {
  const { hose, fitting, machine, hasNoDial } = row;
  if (!catalogue || !hasNoDial || row.dial) return undefined;
  const known = `NO DIAL: ${machine} has no recorded dial for this hose and coupling, and the catalogue’s dials are not for it.`;
  try {
    const { dial, low, high, records, basis } = trialDial(catalogue, hose, fitting, machine);
    const range = low === undefined || high === undefined ? '' : `, 95 %: ${numberText(low)} to ${numberText(high)}`;
    const from = `${BASES[basis]}${records > 0 ? `, ${records} ${records === 1 ? 'record' : 'records'}` : ''}${range}`;
    const sentence = `${known} Trial piece: dial ${dial} (${from}). Crimp ONE trial piece and measure it before the batch.`;
    return { dial: dial.toString(), sentence };
  } catch (error) {
    if (error instanceof TradeError) return { dial: undefined, sentence: `${known} No trial dial either: ${error.message}.` };
    throw error;
  }
}
