import { measureCrimp } from '../../core/crimp/crimpMeasure';
import { TradeError } from '../../core/tradeError';
import { addressOf } from '../../workbook/a1';
import type { CrimpCells } from './crimpCells';
import type { CrimpReader } from './crimpReader';
import { UNNAMED, type Crimp, type CrimpPlace } from './measurements';
import type { ReadingWishes } from './readingWishes';

/** A reading further from the target than this share of it is a slip of the decimal point or the unit. */
const FURTHEST = 0.1;

/** Target and tolerance: from the row, else stated once above the table, else from the catalogue, else typed into the pane. */
function targetOf(reader: CrimpReader, hose: string, fitting: string, wishes: ReadingWishes) {
  const { above, typed, setUp } = wishes;
  const smallest = reader.measure('smallest');
  const largest = reader.measure('largest');
  const isBand = smallest !== undefined && largest !== undefined;
  const ownTarget = reader.measure('target') ?? (isBand ? smallest.plus(largest).div(2) : undefined) ?? above?.target;
  const ownTolerance = reader.measure('tolerance') ?? (isBand ? largest.minus(smallest).div(2) : undefined) ?? above?.tolerance;
  const isKnown = ownTarget !== undefined && ownTolerance !== undefined;
  const found = !isKnown && setUp && hose && fitting ? setUp(hose, fitting) : undefined;
  const target = ownTarget ?? found?.target ?? typed?.target;
  const tolerance = ownTolerance ?? found?.tolerance ?? typed?.tolerance;
  const advice =
    'no column, nothing above the table and no crimp data of hose and fitting give it: enter it under Limits and machine';
  if (!target) throw new TradeError('blank', 'target', 'is not known', advice);
  if (!tolerance) throw new TradeError('blank', 'tolerance', 'is not known', advice);
  const source: CrimpPlace['source'] = isKnown ? 'sheet' : found ? 'catalogue' : 'typed';
  return { target, tolerance, largestSpread: above?.largestSpread ?? found?.largestSpread ?? typed?.largestSpread, source };
}

function combinationOf(reader: CrimpReader, hose: string, fitting: string): string {
  return reader.text('combination') || [hose, fitting].filter(Boolean).join(' with ') || UNNAMED;
}

/** What is known of a crimp before it is measured. */
export function placeOf(reader: CrimpReader, crimp: CrimpCells, sheet: string, wishes: ReadingWishes): CrimpPlace {
  const [hose, fitting] = [reader.text('hose'), reader.text('fitting')];
  const combination = combinationOf(reader, hose, fitting);
  const known = {
    row: crimp.row + 1,
    readingsAt: crimp.readings.map(place => ({ sheet, address: addressOf({ ...place, rows: 1, columns: 1 }) })),
    combination,
    hose,
    fitting,
    end: crimp.end || reader.text('end'),
    machine: reader.text('machine') || (wishes.machine ?? ''),
    die: reader.text('die'),
    line: reader.text('line'),
    date: reader.day(),
    dial: reader.dial(),
  };
  return { ...known, ...targetOf(reader, hose, fitting, wishes) };
}

/** The crimp with its readings; throws TradeError where some are missing or cannot be of this crimp. */
export function crimpOf(
  reader: CrimpReader,
  crimp: CrimpCells,
  place: CrimpPlace,
  { unit, readingsACrimp }: ReadingWishes,
): Crimp {
  const readings = reader.readings();
  const isColumn = crimp.readings.length > 1 && crimp.readings[0]!.row !== crimp.readings[1]!.row;
  if (readings.length < 2 || (isColumn && readings.length < readingsACrimp)) {
    const wanted = Math.max(2, isColumn || readings.length < 2 ? readingsACrimp : 2);
    const advice = isColumn || readings.length < 2 ? ', or say under Limits and machine how many rows make a crimp' : '';
    throw new TradeError('shape', 'crimp', `has ${readings.length} of ${wanted} readings`, `measure the others${advice}`);
  }
  readings.forEach((reading, index) => {
    if (reading.minus(place.target).abs().lte(place.target.times(FURTHEST))) return;
    reader.at = crimp.readings[index]!;
    const advice = `it is too far from the target ${place.target} ${unit}: check the decimal point and the unit`;
    throw new TradeError('range', `reading ${index + 1}`, `is ${reading}`, advice);
  });
  return { ...place, readings, measure: measureCrimp({ readings, target: place.target, tolerance: place.tolerance }) };
}
