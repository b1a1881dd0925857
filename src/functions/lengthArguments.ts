import type { Bend } from '../core/length/routeLength';
import { TradeError } from '../core/tradeError';
import type { Decimal } from '../core/units/decimal';
import { column, optionalColumn } from '../cells/columns';
import { contentsOf } from '../cells/list';
import { number, type CellReader } from '../cells/readers';
import type { Cells } from '../cells/singles';

const readLength = number({ sign: 'positive', zeroIsBlank: true, hint: 'enter a length' });
const readCutOff = number({ mayBeDate: true, hint: 'enter a length' });

/** A length of hose or assembly, one a row. */
export const lengthColumn = (label: string, cells: Cells) => column(label, cells, readLength);

/** What lies between cut and overall length, one a row: both cut-offs and the allowance. */
export const couplingColumns = (cutOffA: Cells, cutOffB: Cells, allowance: Cells) =>
  [
    column('cut-off A', cutOffA, readCutOff),
    column('cut-off B', cutOffB, readCutOff),
    optionalColumn('allowance', allowance, readCutOff),
  ] as const;

const readShare = number({ sign: 'notNegative', marks: 'noLength', hint: 'enter a fraction', like: '0.04 for 4 %' });

/** Reads a share given as a fraction; a percentage typed as a plain number is refused, since 4 cannot be 4 %. */
export const fraction: CellReader<Decimal> = (cell, label) => {
  const value = readShare(cell, label);
  if (value.lt(1)) return value;
  throw new TradeError('range', label, `is ${value}`, 'enter a fraction below 1: 4 % is 0.04');
};

const missing = (label: string) => new TradeError('blank', label, 'is blank', 'fill it in');

/**
 * All filled cells of a block, row by row.
 * @throws TradeError `blank` where none is filled; the cell error of the first error value that came in
 */
export function numberList(label: string, cells: Cells, read: CellReader<Decimal>): Decimal[] {
  const values = contentsOf(label, cells).flatMap(content => (content === null ? [] : [read(content, label)]));
  if (values.length === 0) throw missing(label);
  return values;
}

const readRadius = number({ sign: 'notNegative', hint: 'enter a radius' });
const readAngle = number({ sign: 'notNegative', marks: 'noLength', hint: 'enter an angle in degrees', like: '90' });

/** Bends from a list of angles and one radius for all, or one for each in the same order; places where both are blank are skipped. */
export function bendList(bendRadius: Cells, bendAngle: Cells): Bend[] {
  const [radii, angles] = [contentsOf('bend radius', bendRadius), contentsOf('bend angle', bendAngle)];
  const oneRadius = radii.length <= 1;
  if (!oneRadius && radii.length !== angles.length) {
    const advice = 'give one radius for all bends, or one for each angle';
    throw new TradeError('shape', 'bend radius', `has ${radii.length} rows, bend angle ${angles.length}`, advice);
  }
  const bends = angles.flatMap((angle, index) => {
    const radius = radii[oneRadius ? 0 : index] ?? null;
    if (angle === null && (oneRadius || radius === null)) return [];
    if (radius === null) throw missing('bend radius');
    if (angle === null) throw missing('bend angle');
    const bend = { radius: readRadius(radius, 'bend radius'), angleDegrees: readAngle(angle, 'bend angle') };
    if (bend.radius.isZero() && !bend.angleDegrees.isZero()) {
      throw new TradeError('blank', 'bend radius', 'is blank or zero', 'fill it in');
    }
    return [bend];
  });
  if (bends.length === 0) throw missing(radii.every(cell => cell === null) ? 'bend radius' : 'bend angle');
  return bends;
}
