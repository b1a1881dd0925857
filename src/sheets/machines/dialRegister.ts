import { momentNumber } from '../../core/units/sheetDate';
import { partKey } from '../../core/catalogue/partName';
import { readCatalogue } from '../../core/catalogue/readCatalogue';
import { cellAddress } from '../../workbook/a1';
import { withTableAt } from '../../workbook/catalogueFormula';
import type { Change } from '../../workbook/workbook';
import { rawTableOf, rawTablesOf, type WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import type { Writing } from '../print/writing';
import type { DialProposal } from './dialProposal';
import { newRegister } from './newRegister';
import { momentFormat, registerPlace, type RegisterPlace, type RegisterField } from './registerPlace';
import type { RegisterStand } from './registerStand';
import { recordedDial, type DialComparison } from './recordedDial';

/** Place of Machines among CATALOGUE's arguments. */
const MACHINES_ARGUMENT = 3;

/** A dial ready to be recorded, or why it cannot be. */
export type DialPlan =
  | { readonly kind: 'refused'; readonly sentence: string; readonly comparison?: DialComparison }
  | {
      readonly kind: 'ready';
      readonly comparison: DialComparison;
      readonly message: readonly string[];
      readonly writing: Writing;
    };

/** What the plan is made from. */
export interface RegisterSources {
  readonly standing: WorkbookCatalogue | undefined;
  /** undefined where the catalogue cannot be used. */
  readonly stand: RegisterStand | undefined;
  /** ISO date, with the time of day where that is known. */
  readonly now: string;
}

const refused = (sentence: string, comparison?: DialComparison): DialPlan => ({
  kind: 'refused',
  sentence,
  ...(comparison && { comparison }),
});

function rowChanges(place: RegisterPlace, sheet: string, proposal: DialProposal, comparison: DialComparison) {
  const { old, setUp, from } = comparison;
  const moment = momentNumber(from)!;
  const by = proposal.by?.trim() ?? '';
  const before = `before ${old.dial || 'none'}${old.from === 'CATALOGUE' ? ' (Catalogue)' : ''}`;
  const cells: Partial<Record<RegisterField, string | number>> = {
    machine: proposal.machine.trim(),
    die: setUp.die,
    hose: proposal.hose.trim(),
    fitting: proposal.fitting.trim(),
    dial: proposal.dial.toNumber(),
    date: moment,
    ...(by !== '' && { by }),
    note: [proposal.note.trim(), place.columns.by === undefined && by !== '' && `by ${by}`, before].filter(Boolean).join('; '),
  };
  const changes: Change[] = [];
  const undo: Change[] = [];
  for (const [field, value] of Object.entries(cells) as [RegisterField, string | number][]) {
    const column = place.columns[field];
    if (column === undefined) continue;
    const cell = { sheet, address: cellAddress({ row: place.row, column }) };
    if (field === 'date') changes.push({ kind: 'format', at: cell, numberFormat: momentFormat(place.dateFormat, moment) });
    changes.push({ kind: 'values', at: cell, values: [[value]] });
    undo.push({ kind: 'values', at: cell, values: [['']] });
  }
  return { changes, undo };
}

/** What is written where, beyond the row itself. */
interface Ground {
  readonly sheet: string;
  readonly place: RegisterPlace;
  readonly changes: readonly Change[];
  readonly undo: readonly Change[];
  readonly message: readonly string[];
}

function groundOf(stand: RegisterStand, { catalogue }: WorkbookCatalogue): Ground | string {
  if (stand.kind === 'none') {
    const { sheet } = stand;
    const made = newRegister(sheet, stand.exists, catalogue!.units.diameter);
    const message = [
      `There is no table Machines yet: ${stand.exists ? `it is made on the blank sheet ${sheet}` : `sheet ${sheet} is made`}, with this dial as its first row.`,
      `The Catalogue cell will read it, too, ${made.place.extended!.address}. What the machine’s dial does (Step, Lowest, Highest) can be added there.`,
    ];
    return { sheet, ...made, message };
  }
  const { at } = stand.table;
  const place = registerPlace(stand.table, stand.sheet);
  if (typeof place === 'string') return place;
  const message = [`Adds row ${place.row + 1} to sheet ${at.sheet}. Earlier rows are not changed.`];
  const range = place.extended?.address;
  if (stand.kind === 'unread') message.push(`The Catalogue cell does not read sheet ${at.sheet} yet: it will read ${range}.`);
  else if (range) message.push(`The Catalogue cell reads Machines to ${at.address} only: it will read ${range}.`);
  return { sheet: at.sheet, place, changes: [], undo: [], message };
}

function writingOf(ground: Ground, { formula, cell }: WorkbookCatalogue, proposal: DialProposal, comparison: DialComparison) {
  const { sheet, place } = ground;
  const row = rowChanges(place, sheet, proposal, comparison);
  const entered = (text: string): Change => ({ kind: 'formulas', at: cell, formulas: [[text]] });
  const changes = [...ground.changes, ...row.changes];
  const undo = [...row.undo, ...ground.undo];
  if (place.extended) {
    changes.push(entered(withTableAt(formula, MACHINES_ARGUMENT, place.extended)));
    undo.unshift(entered(formula));
  }
  const message = `${proposal.machine.trim()}: dial ${proposal.dial} recorded from ${comparison.from}, row ${place.row + 1} of ${sheet}. CRIMPSETUP uses it.`;
  return { changes, undo, message };
}

/** The catalogue as it is once it reads the register. */
function catalogueWith({ tables, catalogue }: WorkbookCatalogue, stand: RegisterStand) {
  if (stand.kind !== 'unread') return catalogue!;
  return readCatalogue(rawTablesOf([...tables, { table: 'machines', raw: rawTableOf(stand.table.content) }]));
}

const BLANKS = [
  ['machine', 'machine'],
  ['hose', 'hose'],
  ['fitting', 'coupling'],
] as const;

const NO_CATALOGUE =
  'This workbook has no Catalogue cell, and a dial is recorded in the table Machines that it reads: load your hoses, couplings and crimp data under Parts › Load first; that makes the cell.';

/**
 * Plans a new row of Machines: what counts now, what would count, what is written; or the sentence that says why not.
 * @throws TradeError where the pair has no crimp data, or the catalogue cannot be read together with the register
 */
export function dialRegister({ standing, stand, now }: RegisterSources, proposal: DialProposal): DialPlan {
  const blank = BLANKS.find(([field]) => partKey(proposal[field]) === '');
  if (blank) return refused(`Say for which ${blank[1]} the dial is.`);
  if (!standing) return refused(NO_CATALOGUE);
  if (!standing.catalogue || !standing.canBeFollowed || !stand)
    return refused(`The Catalogue cannot be used: ${standing.reason}`);
  const comparison = recordedDial(catalogueWith(standing, stand), proposal, now);
  if (comparison.refusal) return refused(comparison.refusal, comparison);
  const ground = groundOf(stand, standing);
  if (typeof ground === 'string') return refused(ground, comparison);
  return { kind: 'ready', comparison, message: ground.message, writing: writingOf(ground, standing, proposal, comparison) };
}
