import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Length } from '../../core/units/lengthUnit';
import type { MeasureUnit } from '../../core/units/measureUnit';
import { addressOf } from '../../workbook/a1';
import type { Workbook } from '../../workbook/workbook';
import type { TableQuestion } from '../table/tableQuestion';
import { tableRows, type LeftOutRow, type ReadReport, type Takeable } from '../table/tableRows';
import { hoseGroups } from './hoseGroups';
import { isReady, stopSentence, type JobLine } from './jobLine';
import { jobStatus } from './jobStatus';
import type { JobTable } from './jobTable';
import { ONE_COUPLING, readJobLine } from './readJobLine';
import type { LineReading } from './jobLineReader';
import { UnknownStatuses } from './unknownStatus';
import { namesKnown } from '../catalogue/namesKnown';
import { type JobChoice, jobChoice } from './jobChoice';
import { type CatalogueRead, type JobTablesRead, jobTablesOf, tablesMeant, otherTables, KEYS } from './jobTablesOf';

/** What is asked of the reading. */
export interface JobWishes {
  /** What the bench can cut. */
  readonly step: Length;
  readonly pressureUnit?: MeasureUnit | undefined;
  /** Rows that are taken though they would be left out. */
  readonly take?: ReadonlySet<Takeable>;
  /** Lines with a single coupling are meant so. */
  readonly plainEnds?: boolean | undefined;
  /** They are to be priced: what has no cost stays out. */
  readonly isPriced?: boolean | undefined;
  /** Lines that are done or planned are no matter here: a quote, a tag printed again. */
  readonly whateverStatus?: boolean;
}

/** The job lines of a sheet, all of them with their standing, and what was left out. */
export interface Jobs {
  readonly choice: JobChoice;
  readonly lines: readonly JobLine[];
  readonly report: ReadReport;
  readonly questions: readonly TableQuestion[];
  readonly catalogue: Catalogue | undefined;
  readonly tables: readonly JobTable[];
}

/** True where some line names a single coupling: somebody has to say whether its other end stays plain hose. */
export const asksAboutPlainEnds = ({ lines }: Jobs): boolean =>
  lines.some(({ standing }) => standing.kind === 'stop' && standing.reasons.includes(ONE_COUPLING));

/** A reason that there are no job lines on a sheet, ready to be shown. */
export class NoJobs extends Error {
  constructor(
    message: string,
    readonly sheet: string,
  ) {
    super(message);
  }
}

interface Read {
  readonly lines: readonly JobLine[];
  readonly leftOut: readonly LeftOutRow[];
  /** Lines taken though their status says that they are done. */
  readonly done: number;
  readonly questions: readonly TableQuestion[];
}

function readTable({ cells, catalogue, said }: JobTablesRead, source: JobTable, choice: JobChoice, wishes: JobWishes): Read {
  const { table, columns, reader } = source;
  const take = wishes.take ?? new Set<Takeable>();
  const lines: JobLine[] = [];
  const leftOut: LeftOutRow[] = [];
  let done = 0;
  const isKnown = namesKnown(catalogue?.index.hoses);
  const keys = KEYS.flatMap(role => columns[role] ?? []);
  const rows = tableRows(cells, table, { name: columns.hose, keys, takesHidden: take.has('hidden'), isKnown });
  const groups = hoseGroups(source, rows, said.meaning, isKnown);
  const reading: LineReading = {
    groupOf: row => groups.ofRow.get(row),
    catalogue,
    step: wishes.step,
    pressureUnit: wishes.pressureUnit,
    plainEnds: wishes.plainEnds ?? false,
    isPriced: wishes.isPriced,
    takesDone: wishes.whateverStatus || take.has('done'),
    takesPlanned: wishes.whateverStatus || take.has('planned'),
  };
  const { block } = choice;
  const statuses = new UnknownStatuses(reader, said.meaning);
  for (const { row, kind: asRow } of rows) {
    const kind = groups.headings.has(row) ? 'remark' : asRow;
    const isMeant = !choice.isChoice || (row >= block.row && row < block.row + block.rows);
    if (!isMeant) continue;
    if (kind !== 'line' && !(kind === 'below' && (take.has('below') || choice.isChoice))) {
      leftOut.push({ row: row + 1, reason: kind });
      continue;
    }
    const asRead = readJobLine(reader, row, reading);
    const line = reading.takesDone ? asRead : statuses.judged(asRead);
    lines.push(line);
    const { standing } = line;
    if (standing.kind === 'stop') leftOut.push({ row: row + 1, reason: 'stop', sentence: stopSentence(line) });
    else if (standing.kind !== 'ready') leftOut.push({ row: row + 1, reason: standing.kind });
    else if (line.quantity === 0) leftOut.push({ row: row + 1, reason: 'none wanted' });
    else if (jobStatus(reader.cell(row, 'status')) === 'done') done += 1;
  }
  return { lines, leftOut, questions: [...(groups.question ? [groups.question] : []), ...statuses.questions], done };
}

const ONE_OF_EACH = 'No quantity column: one of each line.';

/** No column of quantities, and none that is still asked about. */
const takesOneOfEach = ({ reader }: JobTable): boolean =>
  !reader.has('quantity') &&
  !reader.questions.some(({ choices, refusal }) => refusal !== undefined && choices.some(({ value }) => value === 'quantity'));

/**
 * Reads job lines: the one reading for cut lists, cards, tags, quotes, purchase and records.
 * @param choice rows that are meant; the selection where left out
 * @param read the catalogue, where it was read already
 * @throws NoJobs with a sentence where the sheet holds no job table
 */
export async function readJobs(workbook: Workbook, wishes: JobWishes, choice?: JobChoice, read?: CatalogueRead): Promise<Jobs> {
  const meant = choice ?? (await jobChoice(workbook));
  const source = await jobTablesOf(workbook, meant.sheet, read);
  const tables = source ? tablesMeant(source, meant, wishes.take?.has('below') ?? false) : [];
  if (!source || tables.length === 0) {
    throw new NoJobs(
      `Sheet ${meant.sheet} has no table with a column for the hose and one for its length. Select your job lines, or one cell of the job table.`,
      meant.sheet,
    );
  }
  const tablesRead = tables.map(table => readTable(source, table, meant, wishes));
  const lines = tablesRead.flatMap(each => each.lines);
  const taken = lines.filter(line => isReady(line) && line.quantity !== 0);
  const done = tablesRead.reduce((sum, each) => sum + each.done, 0);
  const notes = [
    ...(tables.some(takesOneOfEach) ? [ONE_OF_EACH] : []),
    // Where a tick takes them, somebody has just said so.
    ...(wishes.whateverStatus && done > 0 ? [`${done} of them ${done === 1 ? 'is' : 'are'} done by the status column.`] : []),
  ];
  return {
    choice: meant,
    lines,
    report: {
      sheet: meant.sheet,
      tables: tables.map(({ table }) => addressOf(table.block)),
      taken: taken.map(({ row }) => row),
      leftOut: [...tablesRead.flatMap(each => each.leftOut), ...otherTables(source, tables, meant)],
      ...(notes.length > 0 && { notes }),
    },
    questions: [...tables.flatMap(({ reader }) => reader.questions), ...tablesRead.flatMap(({ questions }) => questions)],
    catalogue: source.catalogue,
    tables,
  };
}
