import { type Measure, nameOfCell } from '../../cells/sheetCell';
import { Decimal } from '../../core/units/decimal';
import { quotedText } from '../../core/quotedText';
import { TradeError } from '../../core/tradeError';
import { gaugeKey, gaugeKindOf } from '../gauges/gauge';
import { namesIn } from '../table/namesInCell';
import type { Piece, PieceEnd } from './piece';
import { statedSpread } from '../crimps/statedSpread';
import { MOST_READINGS, readingRoles, type PieceEndLetter, type PieceRole } from './pieceColumns';
import { pieceStatusOf } from './pieceStatus';
import type { PieceTable } from './pieceTable';

const TICKED = /^(?:x|✓|✔|☑|yes|y|true|ok|1|done)$/i;

class PieceReader {
  readonly problems: string[] = [];

  constructor(
    private readonly from: PieceTable,
    private readonly row: number,
  ) {}

  private attempt<T>(read: () => T): T | undefined {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      this.problems.push(error.message);
      return undefined;
    }
  }

  name = (role: PieceRole): string => this.from.reader.name(this.row, role);

  list = (role: PieceRole): string => this.from.reader.list(this.row, role);

  measure = (role: PieceRole): Measure | undefined => this.attempt(() => this.from.reader.measure(this.row, role));

  number = (role: PieceRole, label: string) => this.attempt(() => this.from.reader.number(this.row, role, label, 'any'));

  isTicked = (role: PieceRole): boolean => TICKED.test(nameOfCell(this.from.reader.cell(this.row, role)));

  date = () => this.attempt(() => this.from.reader.moment(this.row, 'date', 'date'));

  private largestSpread(end: PieceEndLetter): Measure | undefined {
    const { reader } = this.from;
    const own = this.measure(`largestSpread${end}`) ?? this.measure('largestSpread');
    const [verdict, unit] = [reader.columns[`verdict${end}`], reader.unitOf(`reading1${end}`)];
    const stated = own || verdict === undefined ? undefined : statedSpread(reader.cells.formula(this.row, verdict));
    return own ?? (stated !== undefined && unit ? { value: new Decimal(stated), unit } : undefined);
  }

  end(end: PieceEndLetter): PieceEnd {
    const has = readingRoles(end, MOST_READINGS).filter(role => this.from.reader.has(role));
    return {
      fitting: this.name(`fitting${end}`),
      lot: this.list(`lot${end}`),
      die: this.name(`die${end}`),
      dial: this.number(`dial${end}`, `dial ${end}`),
      target: this.measure(`target${end}`),
      tolerance: this.measure(`tolerance${end}`),
      largestSpread: this.largestSpread(end),
      readings: has.map(role => this.measure(role)),
      verdict: this.name(`verdict${end}`),
    };
  }
}

/** The gauges of a row, and what they are where the heading of their column says it. */
function gaugesOf({ reader }: PieceTable, list: (role: PieceRole) => string): Pick<Piece, 'gauges' | 'gaugeKinds'> {
  const [calipers, others] = [namesIn(list('caliper')), namesIn(list('gauge'))];
  const kind = reader.has('gauge') ? gaugeKindOf(reader.heading('gauge')) : 'other';
  const said = [
    ...(kind === 'other' ? [] : others.map(each => [gaugeKey(each), kind] as const)),
    ...calipers.map(each => [gaugeKey(each), 'caliper'] as const),
  ];
  return { gauges: [...calipers, ...others], gaugeKinds: new Map(said) };
}

export function readPiece(from: PieceTable, row: number): Piece {
  const read = new PieceReader(from, row);
  const { name, measure } = read;
  const status = pieceStatusOf(name('status'));
  const facts = {
    sheet: from.table.sheet,
    row: row + 1,
    piece: name('piece'),
    line: name('line'),
    label: name('label'),
    order: name('order'),
    hose: name('hose'),
    lot: read.list('lot'),
    reel: name('reel'),
    cutLength: measure('cutLength'),
    overall: measure('overall'),
    shortest: measure('shortest'),
    longest: measure('longest'),
    ends: [read.end('A'), read.end('B')] as const,
    ferruleLot: read.list('ferruleLot'),
    machine: name('machine'),
    finished: measure('finished'),
    lengthVerdict: name('lengthVerdict'),
    testPressure: measure('testPressure'),
    testedAt: measure('testedAt'),
    testedFor: read.number('testedFor', 'time under pressure')?.toNumber(),
    ...gaugesOf(from, read.list),
    flushed: read.isTicked('flushed'),
    capped: read.isTicked('capped'),
    by: name('by'),
    date: read.date(),
    status: status ?? 'planned',
    ...(status === undefined && { ownStatus: name('status') }),
    replaces: name('replaces'),
    useBy: name('useBy'),
    note: name('note'),
  };
  if (facts.piece === '') read.problems.push('piece is blank: give it a number');
  if (status === undefined) {
    const said = `status is ${quotedText(name('status'))}`;
    read.problems.push(`${said}: write planned, cut, crimped, tested, done or scrapped, and the rest into Note`);
  }
  return { ...facts, problems: read.problems };
}
