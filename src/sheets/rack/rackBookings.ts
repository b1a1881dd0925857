import { convertMeasure } from '../../core/units/measureUnit';
import { TradeError } from '../../core/tradeError';
import type { Length } from '../../core/units/lengthUnit';
import { columnLetters } from '../../workbook/a1';
import { headingForms } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import type { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';
import type { RackRole } from './rackTable';

const isCalled = (heading: string, words: RegExp) => headingForms(heading).some(form => words.test(form));

/**
 * What a rack books off its reels: hose that was used stands in a column of its own, or every row is a booking and the last one of a reel
 * says what is left. Both are asked about once; until then the rows that depend on it are refused.
 */
export class RackBookings {
  readonly questions: TableQuestion[] = [];
  private readonly used: 'left' | 'new' | 'open' | 'none';
  private readonly bookings: 'last' | 'each' | 'open' | 'none';
  /** The last row of each reel, by hose and reel. */
  private readonly last = new Map<string, number>();

  /**
   * @param rows zero-based rows that are stock
   * @param said what was answered, by heading
   */
  constructor(
    private readonly reader: TableReader<RackRole>,
    rows: readonly number[],
    said: HeadingCorrections,
  ) {
    for (const row of rows) this.last.set(this.reelOf(row), row);
    const isLeft = isCalled(reader.heading('length'), HEADING_WORDS.lengthLeft.exact);
    const hasUsed = reader.has('used') && rows.some(row => typeof reader.cell(row, 'used') === 'number');
    this.used = hasUsed && !isLeft ? this.asked(said, 'used', this.usedQuestion()) : 'none';
    const isTwice = reader.has('reel') && rows.some(row => reader.name(row, 'reel') !== '' && this.lastOf(row) !== row);
    this.bookings = hasUsed && isLeft && isTwice ? this.asked(said, 'bookings', this.bookingsQuestion(rows)) : 'none';
  }

  private reelOf(row: number): string {
    return `${this.reader.name(row, 'hose')}\n${this.reader.name(row, 'reel')}`.toLowerCase();
  }

  private lastOf(row: number): number {
    return this.last.get(this.reelOf(row)) ?? row;
  }

  private named(role: RackRole): string {
    return `${columnLetters(this.reader.columns[role]!)}: ${this.reader.heading(role)}`;
  }

  private asked<Choice extends string>(said: HeadingCorrections, key: string, question: TableQuestion): Choice | 'open' {
    const answer = said.get(correctionKey(question.heading));
    if (answer !== undefined) return answer as Choice;
    this.questions.push(question);
    return 'open';
  }

  private usedQuestion(): TableQuestion {
    const [length, used] = [this.named('length'), this.named('used')];
    return {
      asked: 'meaning',
      heading: `length beside ${this.reader.heading('used')}`,
      column: length,
      sentence: `Is ${length} what is left on the reel, or does ${used} still come off it?`,
      choices: [
        { value: 'left', label: `${length} is left` },
        { value: 'new', label: `${used} comes off it` },
      ],
    };
  }

  private bookingsQuestion(rows: readonly number[]): TableQuestion {
    const first = rows.find(row => this.reader.name(row, 'reel') !== '' && this.lastOf(row) !== row)!;
    const alike = rows.filter(row => this.reelOf(row) === this.reelOf(first)).map(row => row + 1);
    return {
      asked: 'meaning',
      heading: 'rows of one reel',
      column: this.named('reel'),
      sentence: `Rows ${alike.slice(0, -1).join(', ')} and ${alike.at(-1)} all name reel ${this.reader.name(first, 'reel')}. Does only the last row of a reel count?`,
      choices: [
        { value: 'last', label: 'Yes, only the last row of each reel' },
        { value: 'each', label: 'No, each row is a piece of hose' },
      ],
    };
  }

  /** Why a row says nothing of what is left; undefined where it does. */
  against(row: number): string | undefined {
    if (this.bookings === 'last' && this.reader.name(row, 'reel') !== '' && this.lastOf(row) !== row)
      return `row ${this.lastOf(row) + 1} says what is left on reel ${this.reader.name(row, 'reel')}`;
    return undefined;
  }

  /** @returns what is left of a row's length. @throws TradeError where nobody has said yet what it is, naming what to say */
  left(row: number, length: Length): Length {
    if (this.used === 'open')
      throw new TradeError('choice', 'length', 'may not be what is left', `say whether ${this.named('used')} comes off it`);
    if (this.bookings === 'open' && this.reader.name(row, 'reel') !== '')
      throw new TradeError(
        'choice',
        `reel ${this.reader.name(row, 'reel')}`,
        'may be in several rows',
        'say whether each row counts',
      );
    if (this.used !== 'new') return length;
    const used = this.reader.measure(row, 'used', 'notNegative');
    if (!used) return length;
    const left = length.value.minus(convertMeasure(used.value, used.unit, length.unit));
    if (left.lt(0)) throw new TradeError('range', 'length used', 'is more than the length of the reel', 'correct one of them');
    return { value: left, unit: length.unit };
  }
}
