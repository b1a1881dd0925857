import { pageScale } from '../print/pageScale';
import { addressOf } from '../../workbook/a1';
import type { Change } from '../../workbook/workbook';
import { WHERE_TO_MEASURE } from '../print/cautions';
import { textLines } from '../print/textLines';
import { pageStarts } from '../print/pageStarts';
import { BAND_FILL, STOP_FILL } from '../print/sheetFills';
import { SheetWriter, type WrittenCell } from '../print/sheetWriter';
import type { InspectionRecord, RecordCrimp, RecordOptions } from './inspectionRecord';
import {
  recordedLimits,
  decisionRule,
  diameter,
  proofFacts,
  readingCount,
  readingTexts,
  RECORD_CAUTIONS,
  recordStops,
  targetText,
  verdictText,
  workFacts,
  type RecordFact,
} from './recordFacts';
import { RECORD_PIECE_HEADINGS, pieceTexts } from './recordPieces';
import { recordResult } from './recordResult';

/** Label and value side by side, three pairs a row of the facts. */
const PAIRS = 3;
const PAIR_COLUMNS = 4;
const COLUMNS = PAIRS * PAIR_COLUMNS;
const ACROSS = 150;
const ROW_POINTS = 15;
const FACT_POINTS = 20;
/** Width of a column that nobody set. */
const USUAL_WIDTH = 64;
const MARGIN = 34;
/** Widths before the readings, of one reading, and after them. */
const [BEFORE, READING, AFTER] = [[60, 34, 150, 48, 48], 52, [56, 52, 92, 50, 88]] as const;

const widthsFor = (readings: number): readonly number[] => [
  ...BEFORE,
  ...Array.from({ length: readings }, () => READING),
  ...AFTER,
];

type Kind = 'title' | 'heading' | 'facts' | 'crimp' | 'stop' | 'text' | 'sign';

interface RecordRow {
  readonly kind: Kind;
  readonly cells: readonly WrittenCell[];
}

function factRows(facts: readonly RecordFact[]): RecordRow[] {
  const rows: RecordRow[] = [];
  for (let first = 0; first < facts.length; first += PAIRS) {
    const cells = facts.slice(first, first + PAIRS).flatMap(({ label, value }) => [label, '', value, '']);
    rows.push({ kind: 'facts', cells });
  }
  return rows;
}

const text = (kind: Kind, words: string): RecordRow[] => textLines(words, ACROSS).map(line => ({ kind, cells: [line] }));

function crimpRow(crimp: RecordCrimp, record: InspectionRecord, readings: number): RecordRow {
  const { unit } = record;
  const values = readingTexts(record, crimp, readings);
  const spread = crimp.spread?.toString() ?? '';
  const cells = [crimp.piece, crimp.end, crimp.fitting, crimp.die, crimp.dial, ...values, diameter(crimp.mean, unit)];
  return { kind: 'crimp', cells: [...cells, targetText(crimp), recordedLimits(crimp), spread, verdictText(crimp)] };
}

function resultText(name: string, noted: string): string {
  return noted ? `${name}: ${noted}` : `${name}: ☐ none ☐ found`;
}

const SIGNATURES = ['Date', '', '', '', 'Made and measured', '', '', '', 'Tested'];

/** A piece a line: its cells stand in one row, parted by their headings. */
function pieceRows(record: InspectionRecord): readonly RecordRow[] {
  const rows = pieceTexts(record);
  if (rows.length === 0) return [];
  const said = rows.flatMap(([piece = '', ...others]) => {
    const facts = others.flatMap((value, index) => (value === '' ? [] : [`${RECORD_PIECE_HEADINGS[index + 1]!}: ${value}`]));
    return text('text', [piece, ...facts].join(' · '));
  });
  return [{ kind: 'heading', cells: ['Pieces'] }, ...said];
}

function recordRows(record: InspectionRecord, options: RecordOptions, readings: number): readonly RecordRow[] {
  const { leak, slip, twist } = options.result;
  // A record of something rejected has no line to release it on.
  const isRejected = recordResult(record, options.result).kind === 'rejected';
  const numbers = Array.from({ length: readings }, (_, index) => index + 1);
  return [
    { kind: 'title', cells: [`Inspection record: ${[record.title, record.label].filter(Boolean).join(', ')}`] },
    ...text('stop', recordResult(record, options.result).sentence),
    ...recordStops(record).flatMap(stop => text('stop', `LOOK: ${stop}`)),
    ...factRows(workFacts(record, options)),
    ...text('text', `Crimp diameters in ${record.unit}: ${WHERE_TO_MEASURE}. The mean counts.`),
    {
      kind: 'heading',
      cells: ['piece', 'end', 'coupling', 'die', 'dial', ...numbers, 'mean', 'target', 'limits', 'spread', 'verdict'],
    },
    ...record.crimps.map(crimp => crimpRow(crimp, record, readings)),
    ...text('text', decisionRule(options, record)),
    ...pieceRows(record),
    { kind: 'heading', cells: ['Proof test'] },
    ...factRows(proofFacts(record, options)),
    ...text('text', [resultText('Leak', leak), resultText('Slip of a coupling', slip), resultText('Twist', twist)].join('     ')),
    { kind: 'sign', cells: isRejected ? SIGNATURES : [...SIGNATURES, '', '', 'Released'] },
    ...text('text', `${options.source}, ${options.today}. ${RECORD_CAUTIONS.join(' ')}`),
  ];
}

function dress(writer: SheetWriter, rows: readonly RecordRow[], columns: number): void {
  rows.forEach(({ kind }, row) => {
    if (kind === 'title') writer.style(row, 0, 1, columns, { bold: true, fontSize: 13, rowHeight: 22, border: 'bottom' });
    if (kind === 'stop') writer.style(row, 0, 1, columns, { bold: true, fill: STOP_FILL });
    if (kind === 'heading') writer.style(row, 0, 1, columns, { bold: true, fill: BAND_FILL, border: 'all' });
    if (kind === 'crimp') writer.style(row, 0, 1, columns, { border: 'all', rowHeight: FACT_POINTS + 4, wrap: true });
    if (kind === 'sign') writer.style(row, 0, 1, columns, { border: 'bottom', rowHeight: 42 });
    if (kind !== 'facts') return;
    writer.style(row, 0, 1, columns, { rowHeight: FACT_POINTS });
    for (let pair = 0; pair < PAIRS; pair++) writer.style(row, pair * PAIR_COLUMNS + 2, 1, 2, { bold: true, border: 'bottom' });
  });
}

/** Inspection records as a new worksheet that prints a line a page. */
export function recordSheet(sheet: string, records: readonly InspectionRecord[], options: RecordOptions): readonly Change[] {
  const readings = Math.max(...records.map(readingCount));
  const pages = records.map(record => recordRows(record, options, readings));
  const rows = pages.flat();
  const columns = Math.max(COLUMNS, ...rows.map(({ cells }) => cells.length));
  const breaksBefore = pageStarts(pages);
  const writer = new SheetWriter(sheet)
    .format(0, 0, rows.length, columns, '@')
    .style(0, 0, rows.length, columns, { fontSize: 9, rowHeight: ROW_POINTS })
    .values(
      0,
      0,
      rows.map(row => row.cells),
    )
    .widths(...widthsFor(readings));
  dress(writer, rows, columns);
  const widths = Array.from({ length: columns }, (_, column) => widthsFor(readings)[column] ?? USUAL_WIDTH);
  const printArea = addressOf({ row: 0, column: 0, rows: rows.length, columns });
  return writer
    .page({ orientation: 'landscape', printArea, breaksBefore, scale: pageScale(widths, 'landscape', MARGIN), margin: MARGIN })
    .done();
}
