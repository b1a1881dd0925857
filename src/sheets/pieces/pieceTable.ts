import { headingUnit } from '../../core/units/headingUnit';
import { HEADING_WORDS, type HeadingWords } from '../table/headingWords';
import { headingForms } from '../table/heading';
import { endsOfHeading } from '../table/endOfHeading';
import type { FoundTable } from '../table/findTables';
import { columnsRead, type RoleChoice } from '../table/columnsRead';
import type { HeadingKind } from '../table/headingProposals';
import type { SheetCells } from '../table/sheetCells';
import type { TableAnswers } from '../table/tableAnswers';
import { columnsByRole, type ColumnsByRole, type RoleList } from '../table/tableColumns';
import { correctionKey } from '../table/headingCorrections';
import { TableReader } from '../table/tableReader';
import { END_WORDS, ENDS, MOST_READINGS, PIECE_MEASURES, PLAIN_ROLES, readingRoles, type PieceRole } from './pieceColumns';

/** The table of pieces: what its columns are, and a reader of its rows. */
export interface PieceTable {
  readonly table: FoundTable;
  readonly columns: ColumnsByRole<PieceRole>;
  readonly reader: TableReader<PieceRole>;
}

/** What a column of pieces can be, as it is shown where somebody chooses. */
export const PIECE_ROLE_CHOICES: readonly RoleChoice[] = [
  ...PLAIN_ROLES.map(([role, word]) => ({ role, label: HEADING_WORDS[word].label })),
  ...ENDS.flatMap(end => [
    ...END_WORDS.map(([field, ...[word]]) => ({ role: `${field}${end}`, label: `${HEADING_WORDS[word!].label} ${end}` })),
    ...readingRoles(end).map((role, index) => ({ role, label: `Reading ${end}${index + 1}` })),
  ]),
];

const isRole = (role: string) => PIECE_ROLE_CHOICES.some(choice => choice.role === role);

/** The end's column that a heading names: `Die A`, `Target B (mm)`, `Reading A2 (mm)`. */
function endRole(heading: string): PieceRole | undefined {
  const { name } = headingUnit(heading, 'length');
  for (const { end, rest } of endsOfHeading(name)) {
    const forms = headingForms(rest);
    const field = END_WORDS.find(([, ...words]) =>
      words.some(word => forms.some(form => (HEADING_WORDS[word] as HeadingWords).exact.test(form))),
    )?.[0];
    if (field) return `${field}${end}`;
    const nth = Number(/(\d{1,2})$/.exec(rest)?.[1]);
    if (forms.some(form => HEADING_WORDS.reading.exact.test(form)) && nth >= 1 && nth <= MOST_READINGS) {
      return `reading${nth}${end}`;
    }
  }
  return undefined;
}

function columnsOf({ headings, block }: FoundTable, { role: corrections }: TableAnswers): ColumnsByRole<PieceRole> {
  const ofEnds: Partial<Record<PieceRole, number>> = {};
  const plain = headings.map((heading, index) => {
    const said = corrections.get(correctionKey(heading));
    const role = said === undefined ? endRole(heading) : (said as PieceRole);
    if (!role || (said !== undefined && !isRole(said))) return heading;
    if (said === undefined || PLAIN_ROLES.every(([each]) => each !== said)) ofEnds[role] ??= block.column + index;
    return said === undefined || ofEnds[role] === block.column + index ? '' : heading;
  });
  const found = columnsByRole({ headings: plain, block }, PLAIN_ROLES as RoleList<PieceRole>, corrections);
  return { ...found, ...ofEnds };
}

/** What the headings of pieces can mean, for a sheet in which none is known. */
export const PIECE_HEADINGS: HeadingKind = {
  kind: 'pieces',
  roles: PIECE_ROLE_CHOICES,
  needs: [['piece'], ['hose']],
  columnsOf: (_, table, answers) => columnsRead(table, columnsOf(table, answers)),
};

/** A table as pieces: at least their number and the hose; undefined where it is no such table. */
export function pieceTable(cells: SheetCells, table: FoundTable, answers: TableAnswers): PieceTable | undefined {
  const columns = columnsOf(table, answers);
  if (columns.piece === undefined || columns.hose === undefined) return undefined;
  const numbers: readonly PieceRole[] = ['dialA', 'dialB', 'testedFor'];
  return { table, columns, reader: new TableReader(cells, table, columns, PIECE_MEASURES, answers, {}, numbers) };
}
