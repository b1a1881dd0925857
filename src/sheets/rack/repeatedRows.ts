import { TradeError } from '../../core/tradeError';
import { columnLetters } from '../../workbook/a1';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import type { TableQuestion } from '../table/tableQuestion';
import type { TableReader } from '../table/tableReader';
import type { RackRole } from './rackTable';

const HEADING = 'rows that are alike';

/**
 * Rows of a named reel that are alike in every cell: one piece of hose entered twice, or two pieces that lie side by side. It is asked about
 * once; until then only the first of them is taken.
 */
export class RepeatedRows {
  readonly questions: TableQuestion[] = [];
  private readonly answer: string | undefined;
  /** The first row that is like a row further down, by that row. */
  private readonly firstOf = new Map<number, number>();

  /**
   * @param rows zero-based rows that are stock
   * @param said what was answered, by heading
   */
  constructor(
    private readonly reader: TableReader<RackRole>,
    rows: readonly number[],
    said: HeadingCorrections,
  ) {
    const { block } = reader.table;
    const seen = new Map<string, number>();
    for (const row of rows) {
      if (reader.name(row, 'reel') === '') continue;
      const key = JSON.stringify(Array.from({ length: block.columns }, (_, at) => reader.cells.shown(row, block.column + at)));
      const first = seen.get(key);
      if (first === undefined) seen.set(key, row);
      else this.firstOf.set(row, first);
    }
    this.answer = said.get(correctionKey(HEADING));
    if (this.firstOf.size > 0 && this.answer === undefined) this.questions.push(this.question());
  }

  private question(): TableQuestion {
    const [again, first] = [...this.firstOf][0]!;
    return {
      asked: 'meaning',
      heading: HEADING,
      column: `${columnLetters(this.reader.columns.reel!)}: ${this.reader.heading('reel')}`,
      sentence: `Rows ${first + 1} and ${again + 1} are alike in every cell, reel ${this.reader.name(first, 'reel')}. Is that one piece of hose, entered twice?`,
      choices: [
        { value: 'once', label: 'Yes, count it once' },
        { value: 'each', label: 'No, each row is a piece of hose' },
      ],
    };
  }

  /**
   * Why a row is not counted; undefined where it is.
   * @throws TradeError where nobody has said yet whether rows that are alike count, naming what to say
   */
  against(row: number): string | undefined {
    const first = this.firstOf.get(row);
    if (first === undefined || this.answer === 'each') return undefined;
    if (this.answer === 'once') return `row ${first + 1} is the same piece of hose`;
    const received = `is row ${first + 1} once more, cell by cell`;
    throw new TradeError('choice', 'the row', received, 'say whether it is another piece of hose');
  }
}
