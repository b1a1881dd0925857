import { dayNumber } from '../../core/catalogue/dayNumber';
import { splitHeading } from '../../core/catalogue/headings';
import { headingKey, partKey } from '../../core/catalogue/partName';
import { machinesTable } from '../../core/catalogue/tables/machinesTable';
import { addressOf, blockOf, SHEET_ROWS, type Block } from '../../host/a1';
import { withTableAt } from '../../host/catalogue/catalogueFormula';
import type { Change, RangeAddress, RangeContent } from '../../host/workbook';
import type { StandingCatalogue } from '../catalogue/standingCatalogue';
import { isDateFormat } from '../columns/dateTrouble';
import type { DialProposal } from './dialProposal';
import { standingDial, type DialComparison } from './standingDial';
import type { Writing } from '../sheets/useWriting';

type Field = keyof typeof machinesTable.fields;

/** Place of Machines among CATALOGUE's arguments. */
const MACHINES_ARGUMENT = 3;
/** Rows that the range gets besides, where nothing stands below. */
const SPARE_ROWS = 20;
const NEEDED = ['machine', 'die', 'hose', 'fitting', 'dial', 'date'] as const satisfies readonly Field[];

/** A dial ready to be recorded, or why it cannot be. */
export type DialPlan =
  | { readonly kind: 'refused'; readonly sentence: string; readonly comparison?: DialComparison }
  | { readonly kind: 'ready'; readonly comparison: DialComparison; readonly told: readonly string[]; readonly writing: Writing };

/** What the plan is made from. */
export interface RegisterSources {
  readonly standing: StandingCatalogue | undefined;
  /** The used part of the sheet that Machines stands on. */
  readonly sheet: RangeContent | undefined;
  readonly today: string;
}

interface Place {
  /** Columns by field, counted from the left of the sheet. */
  readonly columns: Readonly<Partial<Record<Field, number>>>;
  /** The new row, counted from 0. */
  readonly row: number;
  readonly lastRow: number;
  /** The range that CATALOGUE is to read; undefined where the one it reads will do. */
  readonly extended: RangeAddress | undefined;
  readonly dateFormat: string;
}

const refused = (sentence: string, comparison?: DialComparison): DialPlan => ({
  kind: 'refused',
  sentence,
  ...(comparison && { comparison }),
});

function columnsOf({ values, column }: RangeContent): Partial<Record<Field, number>> {
  const headings = values.find(row => row.some(cell => cell !== '')) ?? [];
  const keys = headings.map(cell => (typeof cell === 'string' ? headingKey(splitHeading(cell).name) : ''));
  const found: Partial<Record<Field, number>> = {};
  for (const [field, { heading }] of Object.entries(machinesTable.fields) as [Field, { heading: string }][]) {
    const index = keys.indexOf(headingKey(heading));
    if (index >= 0) found[field] = column + index;
  }
  return found;
}

/** First row under the table in which something stands in its columns; the end of the sheet where nothing does. */
function nextFilledRow(sheet: RangeContent, block: Block, from: number): number {
  for (let row = from; row < sheet.row + sheet.values.length; row++) {
    for (let column = block.column; column < block.column + block.columns; column++) {
      const value = sheet.values[row - sheet.row]?.[column - sheet.column] ?? '';
      const formula = sheet.formulas[row - sheet.row]?.[column - sheet.column] ?? '';
      if (value !== '' || formula !== '') return row;
    }
  }
  return SHEET_ROWS;
}

function placeOf(table: { at: RangeAddress; content: RangeContent }, sheet: RangeContent): Place | string {
  const { at, content } = table;
  const columns = columnsOf(content);
  const missing = NEEDED.filter(field => columns[field] === undefined).map(field => machinesTable.fields[field].heading);
  if (missing.length > 0) return `Machines has no column ${missing.join(', ')}: add it, so that old dials are kept.`;
  const block = blockOf(at.address)!;
  const used = content.values.reduce((last, row, index) => (row.some(cell => cell !== '') ? index : last), 0);
  const lastRow = content.row + used;
  const row = lastRow + 1;
  const free = nextFilledRow(sheet, block, row);
  if (free === row)
    return `Something stands right below the table Machines, in row ${row + 1} of sheet ${at.sheet}: make room there.`;
  const isInside = row < block.row + block.rows;
  const rows = Math.min(row - block.row + 1 + SPARE_ROWS, free - block.row);
  const extended = isInside ? undefined : { sheet: at.sheet, address: addressOf({ ...block, rows }) };
  const above = content.formats[used]?.[columns.date! - content.column] ?? '';
  return { columns, row, lastRow, extended, dateFormat: isDateFormat(above) ? above : 'yyyy-mm-dd' };
}

function rowChanges(place: Place, at: RangeAddress, proposal: DialProposal, comparison: DialComparison) {
  const { old, setUp } = comparison;
  const before = `before ${old.dial}${old.from === 'CATALOGUE' ? ' (Catalogue)' : ''}`;
  const cells: Partial<Record<Field, string | number>> = {
    machine: proposal.machine.trim(),
    die: setUp.die,
    hose: proposal.hose.trim(),
    fitting: proposal.fitting.trim(),
    dial: proposal.dial.toNumber(),
    date: dayNumber(proposal.date)!,
    note: [proposal.note.trim(), before].filter(Boolean).join('; '),
  };
  const changes: Change[] = [];
  const undo: Change[] = [];
  for (const [field, value] of Object.entries(cells) as [Field, string | number][]) {
    const column = place.columns[field];
    if (column === undefined) continue;
    const cell = { sheet: at.sheet, address: addressOf({ row: place.row, column, rows: 1, columns: 1 }) };
    if (field === 'date') changes.push({ kind: 'format', at: cell, numberFormat: place.dateFormat });
    changes.push({ kind: 'values', at: cell, values: [[value]] });
    undo.push({ kind: 'values', at: cell, values: [['']] });
  }
  return { changes, undo };
}

function writingOf(
  place: Place,
  standing: StandingCatalogue,
  at: RangeAddress,
  proposal: DialProposal,
  comparison: DialComparison,
) {
  const row = rowChanges(place, at, proposal, comparison);
  const told = [`Row ${place.row + 1} of sheet ${at.sheet} is added; the rows before stay as they are.`];
  const formula = (text: string): Change => ({ kind: 'formulas', at: standing.cell, formulas: [[text]] });
  const changes = [...row.changes];
  const undo = [...row.undo];
  if (place.extended) {
    changes.push(formula(withTableAt(standing.formula, MACHINES_ARGUMENT, place.extended)));
    undo.unshift(formula(standing.formula));
    told.push(`The Catalogue cell read Machines to ${at.address} only: it is made to read ${place.extended.address}.`);
  }
  const done = `${proposal.machine.trim()}: dial ${proposal.dial} recorded from ${proposal.date}, row ${place.row + 1} of ${at.sheet}. CRIMPSETUP uses it.`;
  return { told, writing: { changes, undo, told: done } };
}

const BLANKS = [
  ['machine', 'machine'],
  ['hose', 'hose'],
  ['fitting', 'coupling'],
] as const;

/** Plans a new row of Machines: what counts now, what would count, what is written; or the sentence that says why not. */
export function dialRegister({ standing, sheet, today }: RegisterSources, proposal: DialProposal): DialPlan {
  const blank = BLANKS.find(([field]) => partKey(proposal[field]) === '');
  if (blank) return refused(`Say for which ${blank[1]} the dial is.`);
  if (!standing) return refused('This workbook has no Catalogue cell: a dial is recorded in the table Machines that it reads.');
  if (!standing.catalogue || !standing.canBeFollowed) return refused(`The Catalogue cannot be used: ${standing.reason}`);
  const table = standing.tables.find(each => each.table === 'machines');
  if (!table || !sheet) {
    return refused(
      'The Catalogue cell reads no table Machines: give it one, with headings Machine, Die, Hose, Fitting, Dial, Date.',
    );
  }
  const comparison = standingDial(standing.catalogue, proposal, today);
  if (comparison.refusal) return refused(comparison.refusal, comparison);
  const place = placeOf(table, sheet);
  if (typeof place === 'string') return refused(place, comparison);
  return { kind: 'ready', comparison, ...writingOf(place, standing, table.at, proposal, comparison) };
}
