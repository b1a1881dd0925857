import { quotedText } from '../../core/quotedText';
import { pieceKey } from '../pieces/piece';
import { lotInCell } from './lotInCell';
import type { KnownGauge, LotOf, RecallRequest } from './recallRequest';

/** A cell that ought to name a lot. */
export interface LotCell {
  readonly of: Exclude<LotOf, 'any'>;
  readonly label: string;
  /** Hose or coupling that the lot is of; "" = not known. */
  readonly part: string;
  readonly lot: string;
}

/** What a row of pieces or of records says of where things came from. */
export interface Traces {
  readonly lots: readonly LotCell[];
  readonly gauges: readonly string[];
  /** One for each crimped end; "" where none is named. */
  readonly dies: readonly string[];
  readonly isMeasured: boolean;
  readonly isTested: boolean;
  /** False for what was never cut: it was not made on any day. */
  readonly isMade: boolean;
  /** Day number of its making. */
  readonly day: number | undefined;
  /** Day number after which it was not made, where its own day is not known. */
  readonly notAfter?: number | undefined;
}

/** How a row belongs to what is asked back. `open`: it cannot be excluded. */
export interface Finding {
  readonly kind: 'hit' | 'open';
  readonly why: string;
  /** Open only because the row does not say. */
  readonly isSilent?: boolean;
}

const hit = (why: string): Finding => ({ kind: 'hit', why });
const open = (why: string): Finding => ({ kind: 'open', why });
const silent = (why: string): Finding => ({ kind: 'open', why, isSilent: true });

function byLot({ lots }: Traces, request: Extract<RecallRequest, { by: 'lot' }>): Finding | undefined {
  // Who names a part may have misspelt it: a lot that stands there counts in any case.
  const cells = lots.filter(({ of }) => request.of === 'any' || of === request.of);
  const said = cells.map(cell => ({ ...cell, says: lotInCell(cell.lot, request.lot) }));
  const named = said.find(({ says }) => says === 'named');
  if (named) return hit(`${named.label} ${named.lot}`);
  const mentioned = said.filter(({ says }) => says === 'mentioned');
  if (mentioned.length > 0) return open(mentioned.map(({ label, lot }) => `${label} ${quotedText(lot)}`).join(', '));
  const part = pieceKey(request.part);
  const isOfPart = (cell: LotCell) => part === '' || cell.of === 'ferrule' || pieceKey(cell.part) === part;
  const blank = said.filter(cell => cell.says === 'none' && isOfPart(cell));
  return blank.length > 0 ? silent(`no ${blank.map(({ label }) => label).join(', no ')}`) : undefined;
}

function byGauge(
  { gauges, dies, isMeasured, isTested, day, notAfter }: Traces,
  { name, kind, since }: Extract<RecallRequest, { by: 'gauge' }>,
  known: readonly KnownGauge[],
): Finding | undefined {
  const latest = day ?? notAfter;
  if (since !== undefined && latest !== undefined && latest < since) return undefined;
  const names = [...gauges, ...dies.filter(Boolean)];
  if (names.some(each => pieceKey(each) === pieceKey(name)))
    return since !== undefined && day === undefined ? open(`${name}, but no date`) : hit(name);
  const kindOf = (each: string) => known.find(one => pieceKey(one.name) === pieceKey(each))?.kind;
  const mentioned = names.filter(each => kindOf(each) === undefined && lotInCell(each, name) === 'mentioned');
  if (mentioned.length > 0) return open(mentioned.map(quotedText).join(', '));
  if (kind === 'die') return dies.includes('') ? silent('no die') : undefined;
  // Measured with another one of the same kind.
  if (gauges.some(each => kindOf(each) !== undefined && kindOf(each) === kind)) return undefined;
  if (!(kind === 'pressure gauge' ? isTested : isMeasured || isTested)) return undefined;
  const strange = gauges.filter(each => kindOf(each) === undefined);
  return silent(strange.length > 0 ? `${strange.join(', ')}: not on sheet Gauges` : `no ${kind || 'gauge'} named`);
}

function byDays({ day, notAfter, isMade }: Traces, { from, to }: Extract<RecallRequest, { by: 'days' }>): Finding | undefined {
  if (day !== undefined) return day >= from && day < to + 1 ? hit('made then') : undefined;
  return !isMade || (notAfter !== undefined && notAfter < from) ? undefined : silent('no date');
}

/** Whether a row belongs to what is asked back: the same for pieces and for records. */
export function recallFinding(traces: Traces, request: RecallRequest, known: readonly KnownGauge[] = []): Finding | undefined {
  if (request.by === 'lot') return byLot(traces, request);
  return request.by === 'gauge' ? byGauge(traces, request, known) : byDays(traces, request);
}
