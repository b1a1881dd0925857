import { nameOfCell, type SheetCell } from '../../cells/sheetCell';
import { columnLetters } from '../../workbook/a1';
import { plainHeading } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import { rivalColumns } from '../table/tableColumns';
import type { TableReader } from '../table/tableReader';
import type { TableQuestion } from '../table/tableQuestion';
import type { RackRole } from './rackTable';

/** Words at the beginning of a status that keep hose from being used. */
const BARRED =
  /^(?:(?:in |under )?quarantined?|block(?:ed)?|lock(?:ed)?|reserved?|allocated|promised|booked|on hold|hold|held|scrap(?:ped)?|reject(?:ed)?|fail(?:ed)?|defect(?:ive)?|damaged?|faulty|kinked|bad|waste|expired|out of date|too old|void|recall(?:ed)?|withdrawn|suspended|return(?:ed)?|sold|shipped|gone|lost|missing|empty|used up|consumed|unusable|do not|don[’']t|not|no longer|never|to be (?:checked|inspected|tested|scrapped|returned)|(?:a)?waiting|pending|under (?:test|inspection)|in (?:test|inspection)|stop)(?![\p{L}\d])/iu;
/** Words that say nothing against it. */
const FREE =
  /^(?:free|ok(?:ay)?|good|fine|available|in stock|on stock|stock|released?|approved|accepted|passed|checked|usable|ready|new|full|unused|open(?:ed)?|in use|started|begun|part(?:ly)? used|rest|offcut|remnant|remainder|whole|unopened|[-–—.]|✓|✔|☑)(?![\p{L}\d])/iu;
const YES = /^(?:x|y|yes|true|1|✓|✔|☑)$/i;
const NO = /^(?:n|no|false|0|☐)$/i;
/** Headings that say what a tick below them means. */
const BARS = /^(?:blocked|quarantined?|reserved)(?: for)?$/;
/** Words at the beginning of a note that keep hose from being used; all others of a note say nothing against it. */
const BARRING_NOTE =
  /^(?:do not use|don[’']t use|not to be used|not usable|quarantined?|blocked|reserved?|on hold|hold|scrap(?:ped)?|reject(?:ed)?)(?![\p{L}\d])/iu;
/** More words than these are asked about together. */
const ASKED_ALONE = 4;

/** What a status says of a piece of hose. */
type StockStatus = 'free' | 'barred' | 'unknown';

/** What stands in a cell: the name of an error too. */
const writtenIn = (cell: SheetCell) => (typeof cell === 'object' ? cell.error : nameOfCell(cell));

/**
 * What a status cell of a rack says: hose in quarantine, blocked, reserved, scrap … may not be used; words that nobody knows are asked about.
 * @param heading below `Blocked` or `Reserved for` whatever stands there keeps the hose from being used
 */
export function stockStatus(cell: SheetCell, heading: string): StockStatus {
  const text = writtenIn(cell);
  if (text === '') return 'free';
  if (HEADING_WORDS.note.exact.test(plainHeading(heading))) return BARRING_NOTE.test(text) ? 'barred' : 'free';
  if (BARS.test(plainHeading(heading))) return NO.test(text) || FREE.test(text) ? 'free' : 'barred';
  if (BARRED.test(text) || NO.test(text)) return 'barred';
  return FREE.test(text) || YES.test(text) ? 'free' : 'unknown';
}

const keyOf = (words: readonly string[]) => `status ${words.join('; ')}`;
const listed = (words: readonly string[]) => words.map(word => `“${word}”`).join(', ');

/** What a rack's columns for the status say: several may, like `Status` and `Reserved for`. Words that nobody knows are asked about. */
export class RackStatus {
  readonly questions: readonly TableQuestion[];
  private readonly usable = new Map<string, boolean>();
  private readonly columns: readonly number[];

  /**
   * @param rows zero-based rows that are stock
   * @param said what was answered, by `keyOf`
   */
  constructor(
    private readonly reader: TableReader<RackRole>,
    rows: readonly number[],
    said: HeadingCorrections,
  ) {
    const { status } = reader.columns;
    const { headings, block } = reader.table;
    const notes = headings.flatMap((heading, at) =>
      HEADING_WORDS.note.exact.test(plainHeading(heading)) && block.column + at !== status ? [block.column + at] : [],
    );
    this.columns = [...(status === undefined ? [] : [status, ...rivalColumns(reader.table, status, 'stockStatus')]), ...notes];
    this.questions = this.columns.flatMap(column => this.askedAbout(column, rows, said));
  }

  private askedAbout(column: number, rows: readonly number[], said: HeadingCorrections): readonly TableQuestion[] {
    const unknown = rows.filter(row => this.status(row, column) === 'unknown').map(row => this.text(row, column));
    const words = [...new Map(unknown.map(word => [correctionKey(word), word])).values()].sort();
    const groups = words.length > ASKED_ALONE ? [words] : words.map(word => [word]);
    return groups.flatMap(group => {
      const answer = said.get(correctionKey(keyOf(group)));
      if (answer === undefined) return [this.question(column, group)];
      for (const word of group) this.usable.set(correctionKey(word), answer === 'free');
      return [];
    });
  }

  private heading(column: number): string {
    return this.reader.table.headings[column - this.reader.table.block.column] ?? '';
  }

  private status(row: number, column: number): StockStatus {
    return stockStatus(this.reader.cells.shown(row, column), this.heading(column));
  }

  private text(row: number, column: number): string {
    return writtenIn(this.reader.cells.shown(row, column));
  }

  private question(at: number, words: readonly string[]): TableQuestion {
    const column = `${columnLetters(at)}: ${this.heading(at)}`;
    const isOne = words.length === 1;
    return {
      asked: 'meaning',
      heading: keyOf(words),
      column,
      sentence: `Column ${column} says ${listed(words)}. May that hose be used?`,
      choices: [
        { value: 'free', label: isOne ? 'Yes, it may be used' : 'Yes, all of it' },
        { value: 'barred', label: isOne ? 'No, leave it out' : 'No, none of it' },
      ],
    };
  }

  /** Why a row must not be used; undefined where it may. */
  against(row: number): string | undefined {
    return this.columns.map(column => this.saidBy(row, column)).find(said => said !== undefined);
  }

  private saidBy(row: number, column: number): string | undefined {
    const status = this.status(row, column);
    const word = this.text(row, column);
    const isUsable = this.usable.get(correctionKey(word));
    if (status === 'free' || (status === 'unknown' && isUsable)) return undefined;
    const said = `${this.heading(column)}: ${word}`;
    return status === 'unknown' && isUsable === undefined ? `${said}; say whether it may be used` : said;
  }
}
