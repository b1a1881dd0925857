import { Decimal } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import { crimpEndOf } from '../jobs/crimpEndOf';
import { hoseKey } from '../jobs/cutLine';
import { dueText } from '../jobs/dueText';
import { isReady, quantityOf, type JobLine } from '../jobs/jobLine';
import type { Jobs } from '../jobs/readJobs';
import { byPlace, type PickReel } from './pickReels';

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
  /** Reels of a hose that it may be cut from: those of the cut list, else what the rack has. */
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

class Basket {
  private readonly found = new Map<string, { kind: Kind; part: string; lines: PickLine[] }>();

  add(kind: Kind, part: string, { line, amount, due }: PickLine): void {
    const key = `${kind} ${hoseKey(part)}`;
    const item = this.found.get(key) ?? { kind, part, lines: [] };
    const before = item.lines.findIndex(each => each.line === line);
    if (before >= 0) item.lines[before] = { line, due, amount: item.lines[before]!.amount.plus(amount) };
    else item.lines.push({ line, amount, due });
    this.found.set(key, item);
  }

  items(reels: readonly PickReel[]): readonly PickItem[] {
    const all = [...this.found.values()].sort((a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind));
    return all.map(({ kind, part, lines }): PickItem => {
      const total = lines.reduce((sum, { amount }) => sum.plus(amount), new Decimal(0));
      const own = kind === 'Hose' ? byPlace(reels.filter(({ hose }) => hoseKey(hose) === hoseKey(part))) : [];
      return {
        kind,
        part,
        count: isMeasured(kind) ? undefined : total.toNumber(),
        length: isMeasured(kind) ? total : undefined,
        lines,
        reels: own,
      };
    });
  }
}

const nameOf = ({ line, row }: JobLine) => line || `row ${row}`;

/**
 * What to fetch for the lines that may be made: hose, couplings, ferrules as the sheet or the crimp data name them, sleeves over the
 * overall length.
 * @param reels of the cut list where there is one, else of the rack
 */
export function pickList(
  { lines, catalogue }: Pick<Jobs, 'lines' | 'catalogue'>,
  reels: readonly PickReel[],
  unit: LengthUnit,
): PickList {
  const basket = new Basket();
  const problems: string[] = [];
  const ready = lines.filter(line => isReady(line) && quantityOf(line) > 0);
  for (const line of ready) {
    const [name, quantity] = [nameOf(line), new Decimal(quantityOf(line))];
    const of = (amount: Decimal): PickLine => ({ line: name, amount, due: dueText(line.due) });
    if (line.cutLength) basket.add('Hose', line.hose, of(lengthIn(line.cutLength, unit).times(quantity)));
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
  const items = basket.items(reels);
  const missing = items.filter(({ kind, reels: own }) => kind === 'Hose' && reels.length > 0 && own.length === 0);
  problems.push(...missing.map(({ part }) => `${part}: none in the rack`));
  return { items, unit, lineCount: ready.length, problems };
}
