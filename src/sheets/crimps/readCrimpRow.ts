import type { Catalogue } from '../../core/catalogue/catalogue';
import { impossibleReading } from '../../core/crimp/impossibleReading';
import type { Decimal } from '../../core/units/decimal';
import { lengthUnitOf } from '../../core/units/lengthUnit';
import type { CrimpCells } from './crimpCells';
import { crimpData } from './crimpData';
import { crimpLimits, disagreements, limitsProblem, machineNumbers } from './crimpLimits';
import type { CrimpReadOptions } from './crimpReadOptions';
import type { CellInSheet, CrimpProblem, CrimpRow, FilledField } from './crimpRow';
import { gaugesOf } from './crimpGauges';
import { CrimpRowReader } from './crimpRowReader';
import type { CrimpField } from './crimpRoles';
import type { CrimpTable } from './crimpTable';
import { cellAddress } from '../../workbook/a1';

const NAMING: readonly CrimpField[] = ['line', 'crimp', 'assembly', 'piece', 'hose', 'combination', 'end', 'fitting', 'target'];
const FILLED: readonly FilledField[] = ['date', 'time', 'operator', 'die', 'dial'];
const PAIR: readonly CrimpField[] = ['combination', 'hose', 'fitting'];

function namesOf(reader: CrimpRowReader) {
  const [hose, fitting] = [reader.name('hose'), reader.name('fitting')];
  const [assembly, piece] = [reader.name('assembly'), reader.name('piece')];
  const line = reader.name('line') || reader.name('crimp');
  const named = [line && `Line ${line}`, assembly && `assembly ${assembly}`, piece && `piece ${piece}`]
    .filter(Boolean)
    .join(', ');
  return {
    hose,
    fitting,
    combination: reader.name('combination') || [hose, fitting].filter(Boolean).join(' with '),
    isNamed: PAIR.some(field => reader.has(field)),
    line,
    assembly,
    piece,
    title: named || `Row ${reader.crimp.row + 1}`,
  };
}

/** Why readings that are there cannot be used: too few of them, or one that cannot be. */
function readingsProblem(
  { crimp }: CrimpRowReader,
  readings: readonly (Decimal | undefined)[],
  { target, tolerance }: Pick<CrimpRow, 'target' | 'tolerance'>,
  readingsACrimp: number,
): CrimpProblem | undefined {
  const end = crimp.end ? `end ${crimp.end}: ` : '';
  const isColumn = crimp.rows.length > 1 || readings.length === 1;
  if (readings.length < 2 || (isColumn && readings.length < readingsACrimp)) {
    const advice = isColumn ? ', or say under Limits and machine how many rows make a crimp' : '';
    const wanted = isColumn ? readingsACrimp : 2;
    const sentence = `${end}crimp has ${readings.length} of ${wanted} readings: measure the others${advice}`;
    return { at: cellAddress(crimp.readings[0]!), sentence };
  }
  const all = readings.filter(reading => reading !== undefined);
  if (!target || !tolerance || all.length < readings.length) return undefined;
  const found = impossibleReading({ readings: all, target: target.value, tolerance: tolerance.value });
  if (!found) return undefined;
  const sentence = `${end}reading ${found.index + 1} is ${found.reading}: ${found.advice}`;
  return { at: cellAddress(crimp.readings[found.index]!), sentence };
}

/** Why nothing may be written to the readings' cells. */
function lockOf(cells: readonly CellInSheet[], { unit }: CrimpTable): string | undefined {
  const formulas = cells.filter(({ isFormula }) => isFormula).map(({ address }) => address);
  if (formulas.length > 0) return `${formulas.join(', ')} hold formulas: readings are not written over formulas.`;
  if (!unit || unit.symbol === 'mm' || unit.symbol === 'in') return undefined;
  return `The readings are in ${unit.symbol}: readings are entered in mm or in inches. Head the columns with (mm) or (in).`;
}

/** One crimp of a table. */
export function readCrimpRow(
  source: CrimpTable,
  crimp: CrimpCells,
  options: CrimpReadOptions,
  catalogue: Catalogue | undefined,
): CrimpRow {
  const unit = lengthUnitOf(source.unit ?? source.likelyUnit);
  const reader = new CrimpRowReader(source, crimp, unit);
  const names = namesOf(reader);
  const machine = reader.name('machine') || source.machineAbove || options.machine.trim();
  const die = reader.name('die');
  const data = catalogue ? crimpData(catalogue, names.hose, names.fitting, machine, unit, die) : {};
  const sources = { above: source.above, data, options, unit };
  const judgedBy = crimpLimits(reader, sources);
  const { limits } = judgedBy;
  const numbers = machineNumbers(reader, sources);
  const problem = limitsProblem(reader, judgedBy, data, source.unit !== undefined);
  const cells = crimp.readings.map(place => reader.cellAt(place));
  const isBlank = cells.every(({ value }) => value === '');
  const { readings, problem: unreadable } = isBlank
    ? { readings: cells.map(() => undefined), problem: undefined }
    : reader.readings();
  const date = reader.moment();
  return {
    sheet: source.table.sheet,
    row: crimp.row + 1,
    rows: crimp.rows.map(row => row + 1),
    end: crimp.end || reader.name('end'),
    ...names,
    order: reader.name('order'),
    operator: reader.name('operator'),
    date,
    dateInSheet: reader.shown('date'),
    machine,
    die,
    wantedDie: data.die ?? '',
    hoseLot: reader.name('hoseLot'),
    hoseMade: reader.shown('hoseMade'),
    fittingLot: reader.name('fittingLot'),
    ...gaugesOf(reader),
    unit,
    cells,
    readings,
    ...limits,
    ...numbers,
    hasNoDial: data.hasNoDial ?? false,
    fields: Object.fromEntries(
      FILLED.flatMap(field => {
        const cell = reader.writable(field);
        return cell ? [[field, cell]] : [];
      }),
    ),
    witness: NAMING.flatMap(field => reader.cell(field) ?? []),
    notes: [...disagreements(limits, data, unit), ...reader.notes],
    problem,
    readingProblem: isBlank ? undefined : (unreadable ?? readingsProblem(reader, readings, limits, options.readingsACrimp)),
    locked: lockOf(cells, source),
  };
}
