import { Decimal } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import { crimpEndOf } from '../jobs/crimpEndOf';
import { hoseKey } from '../jobs/cutLine';
import { dueText } from '../jobs/dueText';
import { isReady, quantityOf, type JobLine } from '../jobs/jobLine';
import type { Jobs } from '../jobs/readJobs';
import type { Piece } from '../pieces/piece';
import { lineNeeds } from './lineNeeds';
import { byPlace, plannedPicks, together, type PickReel } from './pickReels';

/** A line that something is fetched for. */
export interface PickLine {
  readonly line: string;
  readonly amount: Decimal;
  /** `2026-10-09`, or as the job sheet says it; "" where it does not. */
  readonly due: string;
}

/** One thing to fetch. */
export interface PickItem {
  readonly kind: 'Coupling' | 'Ferrule' | 'Sleeve' | 'Hose';
  readonly part: string;
  /** Pieces; undefined for what is measured. */
  readonly count: number | undefined;
  /** Whole length, in the list's unit; undefined for what is counted. */
  readonly length: Decimal | undefined;
  /** Lines that it is for, with how many or how much of it. */
  readonly lines: readonly PickLine[];
  /** Reels of a hose: those of the cut list; for what it does not have, those of the rack that may be used. */
  readonly reels: readonly PickReel[];
}

/** Everything to fetch for some lines. */
export interface PickList {
  readonly items: readonly PickItem[];
  readonly unit: LengthUnit;
  readonly lineCount: number;
  /** What is not known: a ferrule without crimp data, a hose that the rack has none of. */
  readonly problems: readonly string[];
}

type Kind = PickItem['kind'];
const KINDS: readonly Kind[] = ['Hose', 'Coupling', 'Ferrule', 'Sleeve'];
const isMeasured = (kind: Kind) => kind === 'Hose' || kind === 'Sleeve';

const isDay = (due: string) => /^\d{4}-/.test(due);

/** When the first of the lines is due: the earliest day, else what the sheet says instead; "" where it says nothing. */
export function firstDue({ lines }: Pick<PickItem, 'lines'>): string {
  const said = [...new Set(lines.map(({ due }) => due).filter(Boolean))];
  const days = said.filter(isDay).sort();
  return days[0] ?? said.join(', ');
}

/** Where the hose of a line comes from: reels of the cut list, and the rack where some of it is still to be planned. */
interface HoseSource {
  readonly planned: readonly PickReel[];
  readonly fromRack: boolean;
}

class Basket {
  private readonly found = new Map<
    string,
    { kind: Kind; part: string; lines: PickLine[]; planned: PickReel[]; fromRack: boolean }
  >();

  add(kind: Kind, part: string, { line, amount, due }: PickLine, source?: HoseSource): void {
    if (amount.isZero()) return;
    const key = `${kind} ${hoseKey(part)}`;
    const item = this.found.get(key) ?? { kind, part, lines: [], planned: [], fromRack: false };
    item.planned.push(...(source?.planned ?? []));
    item.fromRack ||= source?.fromRack ?? false;
    const before = item.lines.findIndex(each => each.line === line);
    if (before >= 0) item.lines[before] = { line, due, amount: item.lines[before]!.amount.plus(amount) };
    else item.lines.push({ line, amount, due });
    this.found.set(key, item);
  }

  items(reels: readonly PickReel[]): readonly (PickItem & { readonly isMissing: boolean })[] {
    const all = [...this.found.values()].sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind));
    return all.map(({ kind, part, lines, planned, fromRack }) => {
      const total = lines.reduce((sum, { amount }) => sum.plus(amount), new Decimal(0));
      const own = fromRack ? reels.filter(({ hose }) => hoseKey(hose) === hoseKey(part)) : [];
      return {
        kind,
        part,
        count: isMeasured(kind) ? undefined : total.toNumber(),
        length: isMeasured(kind) ? total : undefined,
        lines,
        reels: [...byPlace(together(planned)), ...byPlace(own)],
        isMissing: fromRack && own.length === 0,
      };
    });
  }
}

const nameOf = ({ line, row }: JobLine) => line || `row ${row}`;

/**
 * What to fetch for the lines that may be made: hose, couplings, ferrules as the sheet or the crimp data name them, sleeves over the
 * overall length.
 * @param stock reels of the rack that may be used: for what no cut list has planned yet
 * @param pieces of the sheet Pieces: what is planned comes from the reels named there, what is cut or crimped is not fetched again
 * @param unusableOf what the rack has of a hose that may not be used, and why; left out: no rack was read
 * @param before reels of the rack as it was when the pieces were planned: it still says where those are that they use up
 */
export function pickList(
  { lines, catalogue }: Pick<Jobs, 'lines' | 'catalogue'>,
  stock: readonly PickReel[],
  unit: LengthUnit,
  pieces: readonly Piece[] = [],
  unusableOf?: (hose: string) => string,
  before: readonly PickReel[] = [],
): PickList {
  const basket = new Basket();
  const problems: string[] = [];
  const ready = lines.filter(line => isReady(line) && quantityOf(line) > 0);
  for (const line of ready) {
    const { planned, unplanned, toCrimp } = lineNeeds(pieces, line);
    const [name, quantity] = [nameOf(line), new Decimal(toCrimp)];
    if (toCrimp === 0) problems.push(`Line ${name}: sheet Pieces has all its pieces crimped, so nothing is fetched for it`);
    const of = (amount: Decimal): PickLine => ({ line: name, amount, due: dueText(line.due) });
    if (line.cutLength) {
      const length = lengthIn(line.cutLength, unit);
      const picks = plannedPicks(planned, length, unit, [...stock, ...before]);
      const total = picks.reduce((sum, pick) => sum.plus(pick.length), length.times(unplanned));
      basket.add('Hose', line.hose, of(total), { planned: picks, fromRack: unplanned > 0 });
    }
    for (const index of [0, 1] as const) {
      const end = crimpEndOf(line, index, { catalogue, machine: line.crimper, unit });
      if (end.isPlain || end.fitting === '') continue;
      basket.add('Coupling', end.fitting, of(quantity));
      if (end.ferrule) basket.add('Ferrule', end.ferrule, of(quantity));
      if (end.problem && !end.ferrule) problems.push(`Line ${name}, end ${end.end}: ferrule not known (${end.problem})`);
    }
    if (line.guard === '') continue;
    const over = line.overall ?? line.cutLength;
    if (over) basket.add('Sleeve', line.guard, of(lengthIn(over, unit).times(quantity)));
  }
  const items = basket.items(stock);
  const missing = items.filter(({ isMissing }) => isMissing && (stock.length > 0 || unusableOf !== undefined));
  const noneOf = (part: string) => {
    const unusable = unusableOf?.(part);
    return `${part}: none in the rack${unusable ? ` that may be used: ${unusable}` : ''}`;
  };
  problems.push(...missing.map(({ part }) => noneOf(part)));
  return { items, unit, lineCount: ready.length, problems };
}
