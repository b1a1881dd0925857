import type { Bend } from '../core/length/routeLength';
import { TradeError } from '../core/tradeError';
import type { Decimal } from '../core/units/decimal';
import { cellContent, IncomingError } from '../host/cells/cellContent';
import { passedOn } from '../host/cells/cellError';
import { number, type CellReader } from '../host/cells/readers';
import type { Cells } from '../host/cells/singles';

const notNegative = number({ sign: 'notNegative' });

/** Reads a share given as a fraction; a percentage typed as a plain number is refused, since 4 cannot be 4 %. */
export const fraction: CellReader<Decimal> = (cell, label) => {
  const value = notNegative(cell, label);
  if (value.lt(1)) return value;
  throw new TradeError('range', label, `is ${value}`, 'enter a fraction below 1: 4 % is 0.04');
};

/**
 * All filled cells of a block, row by row.
 * @throws TradeError `blank` where none is filled; the cell error of the first error value that came in
 */
export function numberList(label: string, cells: Cells, read: CellReader<Decimal>): Decimal[] {
  const values: Decimal[] = [];
  for (const cell of (cells ?? []).flat()) {
    const content = cellContent(cell);
    if (content instanceof IncomingError) throw passedOn(content, label);
    if (content !== null) values.push(read(content, label));
  }
  if (values.length === 0) throw new TradeError('blank', label, 'is blank', 'fill it in');
  return values;
}

/** Bends from a list of angles and one radius for all, or one radius for each. */
export function bendList(bendRadius: Cells, bendAngle: Cells): Bend[] {
  const radii = numberList('bend radius', bendRadius, number({ sign: 'notNegative', hint: 'enter a radius' }));
  const angles = numberList('bend angle', bendAngle, number({ sign: 'notNegative', hint: 'enter an angle in degrees' }));
  if (radii.length !== 1 && radii.length !== angles.length) {
    const advice = 'give one radius for all bends, or one for each angle';
    throw new TradeError('shape', 'bend radius', `has ${radii.length} values, bend angle ${angles.length}`, advice);
  }
  return angles.map((angleDegrees, index) => {
    const radius = radii[radii.length === 1 ? 0 : index]!;
    if (radius.isZero() && !angleDegrees.isZero()) throw new TradeError('blank', 'bend radius', 'is blank or zero', 'fill it in');
    return { radius, angleDegrees };
  });
}
