import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Length } from '../../core/units/lengthUnit';
import type { MeasureUnit } from '../../core/units/measureUnit';
import { addressOf, overlap, type Block } from '../../workbook/a1';
import { hostBlocks } from '../../workbook/hostTable';
import type { CellValue, Workbook } from '../../workbook/workbook';
import { workbookCatalogue, type WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import { findTables, tableAt } from '../table/findTables';
import { SheetCells } from '../table/sheetCells';
import { tableAnswers, type TableAnswers } from '../table/tableAnswers';
import type { TableQuestion } from '../table/tableReader';
import { tableRows, type LeftOutRow, type ReadReport, type Takeable } from '../table/tableRows';
import { hoseGroups } from './hoseGroups';
import { isReady, stopSentence, type JobLine } from './jobLine';
import { isStock, jobTable, type JobTable } from './jobTable';
import { ONE_COUPLING, readJobLine, type LineReading } from './readJobLine';
import { namesKnown } from '../catalogue/namesKnown';

/** Which rows of which sheet are meant; read again later, it means the same ones. */
export interface JobChoice {
  readonly sheet: string;
  /** Selected block; a single row of it means the whole table around it. */
  readonly block: Block;
  /** Several rows are selected: these only. */
  readonly isChoice: boolean;
}

/** What is asked of the reading. */
export interface JobWishes {
  /** What the bench can cut. */
  readonly step: Length;
  readonly pressureUnit?: MeasureUnit | undefined;
  /** Rows that are taken though they would be left out. */
  readonly take?: ReadonlySet<Takeable>;
  /** Lines with a single coupling are meant so. */
  readonly plainEnds?: boolean | undefined;
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

/** Whether rows were chosen: two or more, or one of which several filled cells are selected. */
function isRowChoice(values: readonly (readonly CellValue[])[]): boolean {
  return values.length > 1 || values[0]!.filter(value => value !== '').length > 1;
}

/** The rows that are selected now. */
export async function jobChoice(workbook: Workbook): Promise<JobChoice> {
  const { sheet, row, column, values } = await workbook.selection();
  const block = { row, column, rows: values.length, columns: values[0]!.length };
  return { sheet, block, isChoice: isRowChoice(values) };
}

/** The workbook's catalogue as somebody has just read it: reading it means looking through all sheets. */
export type CatalogueRead = Pick<WorkbookCatalogue, 'catalogue'>;

interface Source {
  readonly cells: SheetCells;
  readonly tables: readonly JobTable[];
  readonly catalogue: Catalogue | undefined;
  readonly said: TableAnswers;
}

/** The job tables of a sheet, in order. */
async function jobTablesOf(workbook: Workbook, sheet: string, read: CatalogueRead | undefined): Promise<Source | undefined> {
  const used = await workbook.used(sheet);
  if (!used) return undefined;
  const [tables, layout, catalogue, said] = await Promise.all([
    workbook.tables(sheet),
    workbook.layout(sheet),
    read ? read.catalogue : workbookCatalogue(workbook).then(found => found?.catalogue),
    tableAnswers(workbook, 'jobs', sheet),
  ]);
  const cells = new SheetCells(used, layout);
  const index = catalogue?.index;
  const parts = {
    isHose: namesKnown(index?.hoses),
    isFitting: namesKnown(index?.fittings),
    isMachine: namesKnown(index?.machines),
  };
  const proposals = catalogue && { length: catalogue.units.length, pressure: catalogue.units.pressure };
  const found = findTables(cells, hostBlocks(tables), said.role);
  const jobTables = found.flatMap(table => jobTable(cells, table, said, parts, proposals) ?? []);
  return { cells, tables: jobTables, catalogue, said };
}

/** The tables that a choice means: those it touches, else the one around it. */
function chosenTables({ tables }: Source, { block, isChoice }: JobChoice, takesBelow: boolean): readonly JobTable[] {
  const beside = tables.filter(({ table }) => overlap(table.block, { ...block, column: table.block.column, columns: 1 }));
  const under = tables.filter(({ table }) => overlap(table.block, block));
  const touched = under.length > 0 ? under : beside;
  if (isChoice && touched.length > 0) return touched;
  const at = tableAt(
    tables.map(({ table }) => table),
    block,
  );
  const own = tables.find(({ table }) => table === at) ?? tables[0];
  if (!own) return [];
  // Groups by day: each has headings and columns of its own.
  return takesBelow ? tables.filter(table => table === own || !isStock(table)) : [own];
}

const KEYS = ['hose', 'cutLength', 'overall', 'quantity', 'fittingA', 'fittingB'] as const;

interface Read {
  readonly lines: readonly JobLine[];
  readonly leftOut: readonly LeftOutRow[];
  readonly question: TableQuestion | undefined;
}

function readTable({ cells, catalogue, said }: Source, source: JobTable, choice: JobChoice, wishes: JobWishes): Read {
  const { table, columns, reader } = source;
  const take = wishes.take ?? new Set<Takeable>();
  const lines: JobLine[] = [];
  const leftOut: LeftOutRow[] = [];
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
    takesDone: wishes.whateverStatus || take.has('done'),
    takesPlanned: wishes.whateverStatus || take.has('planned'),
  };
  const { block } = choice;
  for (const { row, kind: asRow } of rows) {
    const kind = groups.headings.has(row) ? 'remark' : asRow;
    const isMeant = !choice.isChoice || (row >= block.row && row < block.row + block.rows);
    if (!isMeant) continue;
    if (kind !== 'line' && !(kind === 'below' && (take.has('below') || choice.isChoice))) {
      leftOut.push({ row: row + 1, reason: kind });
      continue;
    }
    const line = readJobLine(reader, row, reading);
    lines.push(line);
    const { standing } = line;
    if (standing.kind === 'stop') leftOut.push({ row: row + 1, reason: 'stop', sentence: stopSentence(line) });
    else if (standing.kind !== 'ready') leftOut.push({ row: row + 1, reason: standing.kind });
    else if (line.quantity === 0) leftOut.push({ row: row + 1, reason: 'none wanted' });
  }
  return { lines, leftOut, question: groups.question };
}

/** Lines of other job tables on the sheet that were not meant: they are told. */
function otherTables(source: Source, meant: readonly JobTable[], { isChoice }: JobChoice): readonly LeftOutRow[] {
  if (isChoice) return [];
  return source.tables
    .filter(each => !meant.includes(each) && !isStock(each))
    .flatMap(({ table, columns }) =>
      tableRows(source.cells, table, {
        name: columns.hose,
        keys: KEYS.flatMap(role => columns[role] ?? []),
        takesHidden: true,
      }).flatMap(({ row, kind }): LeftOutRow[] =>
        kind === 'line' ? [{ row: row + 1, reason: 'below', sentence: `in the table ${addressOf(table.block)}` }] : [],
      ),
    );
}

/**
 * Reads job lines: the one reading for cut lists, cards, tags, quotes, purchase and records.
 * @param choice rows that are meant; the selection where left out
 * @param read the catalogue, where it was read already
 * @throws NoJobs with a sentence where the sheet holds no job table
 */
export async function readJobs(workbook: Workbook, wishes: JobWishes, choice?: JobChoice, read?: CatalogueRead): Promise<Jobs> {
  const meant = choice ?? (await jobChoice(workbook));
  const source = await jobTablesOf(workbook, meant.sheet, read);
  const tables = source ? chosenTables(source, meant, wishes.take?.has('below') ?? false) : [];
  if (!source || tables.length === 0) {
    throw new NoJobs(
      `Sheet ${meant.sheet} has no table with a column for the hose and one for its length. Select your job lines, or one cell of the job table.`,
      meant.sheet,
    );
  }
  const tablesRead = tables.map(table => readTable(source, table, meant, wishes));
  const lines = tablesRead.flatMap(each => each.lines);
  return {
    choice: meant,
    lines,
    report: {
      sheet: meant.sheet,
      tables: tables.map(({ table }) => addressOf(table.block)),
      taken: lines.filter(line => isReady(line) && line.quantity !== 0).map(({ row }) => row),
      leftOut: [...tablesRead.flatMap(each => each.leftOut), ...otherTables(source, tables, meant)],
    },
    questions: [...tables.flatMap(({ reader }) => reader.questions), ...tablesRead.flatMap(({ question }) => question ?? [])],
    catalogue: source.catalogue,
    tables,
  };
}
