import type { MeasureUnit } from '../../core/units/measureUnit';
import { quantityQuestion, type CountWords } from '../jobs/jobQuantity';
import { columnsRead, roleChoices } from '../table/columnsRead';
import type { FoundTable } from '../table/findTables';
import { headingForms, statedUnit } from '../table/heading';
import type { HeadingKind } from '../table/headingProposals';
import { HEADING_WORDS, type HeadingWord } from '../table/headingWords';
import { nameColumns } from '../table/nameColumns';
import type { SheetCells } from '../table/sheetCells';
import type { TableAnswers } from '../table/tableAnswers';
import { columnsByRole, type ColumnsByRole, type RoleList } from '../table/tableColumns';
import { correctionKey } from '../table/headingCorrections';
import { sizeBeside } from '../table/sizedHose';
import { TableReader } from '../table/tableReader';
import type { MeasureRole } from '../table/measureRole';

/** What a column of a rack can be. */
export type RackRole = 'hose' | 'length' | 'quantity' | 'place' | 'reel' | 'lot' | 'made' | 'status' | 'used';

const RACK_ROLES: RoleList<RackRole> = [
  ['hose', 'hose'],
  // What is left on a reel counts, not what it had when it was new.
  ['length', 'lengthLeft', 'length'],
  ['quantity', 'reels', 'quantity'],
  ['place', 'place'],
  ['reel', 'reel'],
  ['lot', 'lot', 'hoseLot'],
  ['made', 'made', 'hoseMade'],
  ['status', 'stockStatus'],
  ['used', 'usedUp'],
];
const MEASURES: Readonly<Partial<Record<RackRole, MeasureRole>>> = {
  length: { quantity: 'length', group: 'length', label: 'length' },
  used: { quantity: 'length', group: 'length', label: 'length used' },
};

const OF_REELS: CountWords = { yes: 'Yes, that many reels', no: 'No, one reel in each row' };

/** What a column of a rack can be, as it is shown where somebody chooses. */
export const RACK_ROLE_CHOICES = roleChoices(RACK_ROLES);

/** What the headings of a rack can mean, for a sheet in which none is known. */
export const RACK_HEADINGS: HeadingKind = {
  kind: 'rack',
  roles: RACK_ROLE_CHOICES,
  needs: [['hose'], ['length']],
  columnsOf: (_, table, { role }) => columnsRead(table, columnsByRole(table, RACK_ROLES, role)),
};

/** A table of stock: what its columns are, and a reader of its rows. */
export interface RackTable {
  readonly table: FoundTable;
  readonly columns: ColumnsByRole<RackRole>;
  readonly reader: TableReader<RackRole>;
}

/** Columns that a job sheet has and a rack has not. */
const OF_JOBS: readonly HeadingWord[] = ['cutLength', 'overall', 'fittingA', 'fittingB', 'due'];

/** Lines to be made, or the catalogue's hoses, whose lengths are those of new reels. */
function isOtherKind({ headings }: FoundTable): boolean {
  const forms = headings.flatMap(headingForms);
  const names = (word: HeadingWord) => forms.some(form => HEADING_WORDS[word].exact.test(form));
  return forms.includes('family') || OF_JOBS.some(names);
}

/** `Qty (m)` is a length. */
function lengthAsQuantity({ headings, block }: FoundTable): number | undefined {
  const index = headings.findIndex(heading => {
    const { unit, words } = statedUnit(heading, 'length');
    return unit !== undefined && HEADING_WORDS.quantity.exact.test(words);
  });
  return index < 0 ? undefined : block.column + index;
}

/** How a table is read as a rack. */
export interface RackWays {
  readonly answers: TableAnswers;
  readonly isHose?: ((name: string) => boolean) | undefined;
  /** Proposed, never taken, where a heading has no unit. */
  readonly unit?: MeasureUnit | undefined;
}

/** A table as stock: it has at least hose and length, and is neither a job table nor the catalogue's hoses; undefined where it is none. */
export function rackTable(cells: SheetCells, table: FoundTable, { answers, isHose, unit }: RackWays): RackTable | undefined {
  if (isOtherKind(table) && !table.headings.some(heading => answers.role.get(correctionKey(heading)) === 'length')) {
    return undefined;
  }
  const byWords = columnsByRole(table, RACK_ROLES, answers.role);
  const { hose = byWords.hose } = nameColumns(cells, table, { hose: byWords.hose }, { isHose }, answers.role);
  const length = byWords.length ?? lengthAsQuantity(table);
  if (hose === undefined || length === undefined) return undefined;
  // A day beside what was taken off a reel is that of the booking.
  const isBooking = byWords.used !== undefined && /^date$/i.test(table.headings[(byWords.made ?? 0) - table.block.column] ?? '');
  const columns: ColumnsByRole<RackRole> = { ...byWords, hose, length, ...(isBooking && { made: undefined }) };
  const proposals = unit && { length: unit };
  const added = { hose: sizeBeside(cells, table, hose, isHose) };
  const reader = new TableReader<RackRole>(cells, table, columns, MEASURES, answers, proposals, ['quantity'], added);
  const howMany = quantityQuestion(reader, answers.role, OF_REELS);
  if (howMany) reader.questions.push(howMany);
  return { table, columns, reader };
}

/** How much a table looks like a rack: the number of its columns that are known. */
export const rackLikeness = ({ columns }: RackTable): number =>
  Object.values(columns).filter(column => column !== undefined).length;
