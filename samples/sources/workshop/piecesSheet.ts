import type { CellFormulaValue, Worksheet } from 'exceljs';
import { columnLetters } from '../../../src/workbook/a1';
import { lengthVerdictFormula } from '../../../src/sheets/pieces/pieceCells';
import { pieceColumns, readingRoles, type PieceEndLetter, type PieceRole } from '../../../src/sheets/pieces/pieceColumns';
import { at, call, evaluate, named, type Call } from '../book/call';
import { colourVerdicts, dressRows, putHeadings, setWidths, type SheetColumn } from '../book/looks';
import { setUpSheet } from '../book/printSetup';
import { putFormula } from '../book/putFormula';
import { HANDLE } from '../catalogue/lookedUpJobs';
import { madePieces, type MadeLine, type MadePiece } from './sixWeeks';

export const PIECES = 'Pieces';
const MACHINE = 'Machine at the gate';
const PROOF_FACTOR = 2;

const roles = pieceColumns({ length: 'mm', pressure: 'bar' });
/** Points of a column as the character widths of a file. */
const width = (points: number) => Math.max(8, Math.round(points / 5.5));

const READING = /^reading|^target|^tolerance/;
const columns: readonly SheetColumn[] = roles.map(({ role, heading, width: points, format }) => ({
  heading,
  width: width(points),
  ...(READING.test(role) ? { format: '0.00', align: 'right' } : { format: format ?? '0', ...(format ? {} : { align: 'right' }) }),
  ...(/erdict/.test(role) ? { format: '@', kind: 'computed', align: 'center' } : {}),
}));

const place = (role: PieceRole) => roles.findIndex(column => column.role === role) + 1;

/** Set-up of one end as the catalogue gives it that day. */
interface EndSetUp {
  readonly die: string;
  readonly dial: number;
  readonly target: number;
  readonly tolerance: number;
}

/** What a line's pieces have in common. */
interface LineSetUp {
  readonly cutLength: number;
  readonly pressure: number;
  readonly limits: readonly [shortest: number, longest: number];
  readonly ends: readonly [EndSetUp, EndSetUp];
}

async function setUpOf(sheet: Worksheet, line: MadeLine): Promise<LineSetUp> {
  const catalogue = named('Catalogue', 'Catalogue', HANDLE);
  const row = async (what: Call) => (await evaluate(what, sheet))[0]!;
  const end = async (coupling: string): Promise<EndSetUp> => {
    const [die, dial, target, tolerance] = await row(call('CRIMPSETUP', catalogue, line.hose, coupling, MACHINE));
    return { die: String(die), dial: Number(dial), target: Number(target), tolerance: Number(tolerance) };
  };
  const [cutLength, pressure] = await row(call('ASSEMBLY', catalogue, line.hose, ...line.couplings, line.overall));
  const [bore] = await row(call('HOSEDATA', catalogue, line.hose, 'bore'));
  const [shortest, longest] = await row(call('LENGTHLIMITS', line.overall, Number(bore), 'mm'));
  return {
    cutLength: Number(cutLength),
    pressure: Number(pressure),
    limits: [Number(shortest), Number(longest)],
    ends: [await end(line.couplings[0]), await end(line.couplings[1])],
  };
}

const ENDS = ['A', 'B'] as const;
const hundredths = (value: number) => Math.round(value * 100) / 100;

function endCells(piece: MadePiece, setUp: LineSetUp, index: 0 | 1): [PieceRole, string | number][] {
  const letter: PieceEndLetter = ENDS[index];
  const { die, dial, target, tolerance } = setUp.ends[index];
  return [
    [`fitting${letter}`, piece.line.couplings[index]],
    [`die${letter}`, die],
    [`dial${letter}`, dial],
    [`target${letter}`, target],
    [`tolerance${letter}`, tolerance],
    ...readingRoles(letter).map((role, reading): [PieceRole, number] => [role, hundredths(target + piece.off[index][reading]!)]),
  ];
}

function typedCells(piece: MadePiece, setUp: LineSetUp): [PieceRole, string | number | Date][] {
  const { line, order, lineNumber, number } = piece;
  return [
    ['piece', `${order}-${String(lineNumber).padStart(2, '0')}-${number}`],
    ['line', String(lineNumber)],
    ['label', line.label],
    ['order', order],
    ['hose', line.hose],
    ['lot', line.lot],
    ['reel', line.reel],
    ['cutLength', setUp.cutLength],
    ['overall', line.overall],
    ['shortest', setUp.limits[0]],
    ['longest', setUp.limits[1]],
    ['machine', MACHINE],
    ...endCells(piece, setUp, 0),
    ...endCells(piece, setUp, 1),
    ['finished', line.overall + piece.longer],
    ['testPressure', setUp.pressure * PROOF_FACTOR],
    ['flushed', '☑'],
    ['capped', '☑'],
    ['date', piece.day],
  ];
}

/** Puts the verdicts of a row, and says whether both ends and the length are in spec. */
async function putVerdicts(sheet: Worksheet, row: number, piece: MadePiece, [shortest, longest]: LineSetUp['limits']) {
  const verdicts: unknown[] = [];
  for (const letter of ENDS) {
    const [first] = readingRoles(letter);
    const from = columnLetters(place(first!) - 1);
    const to = columnLetters(place(first!) + 2);
    const cell = (role: PieceRole) => at(`${columnLetters(place(role) - 1)}${row}`);
    const verdict = `${columnLetters(place(`verdict${letter}`) - 1)}${row}`;
    const check = call('CRIMPCHECK', at(`${from}${row}:${to}${row}`), cell(`target${letter}`), cell(`tolerance${letter}`));
    verdicts.push((await putFormula(sheet, verdict, check))[0]![0]);
  }
  const finished = piece.line.overall + piece.longer;
  const result = finished < shortest ? 'SHORT' : finished > longest ? 'LONG' : 'IN SPEC';
  const places = new Map(roles.map(({ role }, index) => [role, index]));
  const formula = lengthVerdictFormula(places, row - 1)!.slice(1);
  sheet.getCell(row, place('lengthVerdict')).value = { formula, result } as CellFormulaValue;
  return [...verdicts, result].every(verdict => verdict === 'IN SPEC');
}

/** Fills the pieces of the six weeks before this one, as the bench left them; in week 41 the machine at the gate went off. */
export async function fillPieces(sheet: Worksheet): Promise<void> {
  setWidths(sheet, columns);
  putHeadings(sheet, 1, columns);
  const pieces = madePieces();
  dressRows(sheet, 2, pieces.length + 1, columns);
  const setUps = new Map<MadeLine, LineSetUp>();
  for (const [index, piece] of pieces.entries()) {
    const row = index + 2;
    const setUp = setUps.get(piece.line) ?? (await setUpOf(sheet, piece.line));
    setUps.set(piece.line, setUp);
    for (const [role, value] of typedCells(piece, setUp)) sheet.getCell(row, place(role)).value = value;
    const isGood = await putVerdicts(sheet, row, piece, setUp.limits);
    sheet.getCell(row, place('status')).value = isGood ? 'done' : 'scrapped';
    if (isGood) {
      sheet.getCell(row, place('testedAt')).value = setUp.pressure * PROOF_FACTOR;
      sheet.getCell(row, place('testedFor')).value = 60;
    } else sheet.getCell(row, place('note')).value = 'out of spec: scrapped';
  }
  for (const role of ['verdictA', 'verdictB', 'lengthVerdict'] as const) {
    const letters = columnLetters(place(role) - 1);
    colourVerdicts(sheet, `${letters}2:${letters}${pieces.length + 1}`);
  }
  setUpSheet(sheet, 1, 1);
}
