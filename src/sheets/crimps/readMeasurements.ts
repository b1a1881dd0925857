import { TradeError } from '../../core/tradeError';
import { addressOf } from '../../workbook/a1';
import type { RangeAddress, RangeContent } from '../../workbook/workbook';
import { cellOf, type FoundTable } from '../table/findTable';
import { crimpCells, type CellPlace } from './crimpCells';
import { CrimpReader } from './crimpReader';
import { crimpOf, placeOf } from './measuredCrimp';
import type { MeasurementRole } from './measurementRoles';
import type { Crimp, CrimpPlace, MeasurementProblem, Measurements } from './measurements';
import type { ProposedMeasurements } from './proposeMeasurements';
import type { ReadingWishes } from './readingWishes';

const NAMING: readonly MeasurementRole[] = ['combination', 'hose', 'fitting', 'target', 'line'];

/** Reads the crimps of a table: what is measured, what is not measured yet, and what cannot be used. */
export function readMeasurements(
  used: RangeContent,
  table: FoundTable,
  proposed: ProposedMeasurements,
  wishes: ReadingWishes,
): Measurements {
  const crimps: Crimp[] = [];
  const waiting: CrimpPlace[] = [];
  const problems: MeasurementProblem[] = [];
  const addressAt = (place: CellPlace): RangeAddress => ({
    sheet: table.sheet,
    address: addressOf({ ...place, rows: 1, columns: 1 }),
  });
  for (const crimp of crimpCells(used, table, proposed, wishes.readingsACrimp, wishes.picked)) {
    const reader = new CrimpReader(used, table, crimp, wishes.unit);
    const isNamed = NAMING.some(role => {
      const place = crimp.cells[role];
      return place && cellOf(used, place.row, place.column) !== '';
    });
    if (reader.isUnmeasured() && !isNamed) continue;
    try {
      const place = placeOf(reader, crimp, table.sheet, wishes);
      if (reader.isUnmeasured()) waiting.push(place);
      else crimps.push(crimpOf(reader, crimp, place, wishes));
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      const end = crimp.end ? `end ${crimp.end}: ` : '';
      problems.push({ row: reader.at.row + 1, sentence: `${end}${error.message}`, at: addressAt(reader.at) });
    }
  }
  return { unit: wishes.unit, crimps, waiting, problems };
}
