import { Decimal } from '../../core/units/decimal';
import { lengthUnitOf, type LengthUnit } from '../../core/units/lengthUnit';
import type { CrimpEnd } from '../jobs/benchCard';
import { crimpEndOf } from '../jobs/crimpEndOf';
import { dueText } from '../jobs/dueText';
import { isReady, quantityOf, type JobLine } from '../jobs/jobLine';
import type { Jobs } from '../jobs/readJobs';
import type { WorkEnd, WorkLine } from './workEnd';

const NUMBER = /^-?\d+(?:[.,]\d+)?$/;

function workEnd(end: CrimpEnd): WorkEnd {
  const { smallest, largest, diameter } = end;
  const dial = end.dial !== undefined && NUMBER.test(end.dial) ? new Decimal(end.dial.replace(',', '.')) : undefined;
  return {
    end: end.end,
    die: end.die ?? '',
    dial,
    target: smallest && largest ? smallest.plus(largest).div(2) : diameter,
    tolerance: smallest && largest && largest.minus(smallest).div(2),
  };
}

/** Unit that a line's crimps are counted in. */
function unitOf(line: JobLine, fallback: LengthUnit): LengthUnit {
  const length = line.ends[0].target ?? line.cutLength ?? line.overall;
  return length ? lengthUnitOf(length.unit) : fallback;
}

/**
 * Lines that may be made, as the order of work sees them: die, dial and target of both ends from the sheet, else from the catalogue.
 * @param machine crimper of the lines that name none; "" = the catalogue's dials
 */
export function workLines(
  { lines, catalogue }: Pick<Jobs, 'lines' | 'catalogue'>,
  machine: string,
  unit?: LengthUnit,
): readonly WorkLine[] {
  return lines
    .filter(line => isReady(line) && line.quantity !== 0)
    .map(line => {
      const crimper = line.crimper || machine.trim();
      const source = { catalogue, machine: crimper, unit: unit ?? unitOf(line, 'mm') };
      const ends = ([0, 1] as const).map(index => crimpEndOf(line, index, source));
      return {
        row: line.row,
        line: line.line,
        label: line.label,
        hose: line.hose,
        quantity: quantityOf(line),
        due: dueText(line.due),
        machine: crimper,
        ends: ends.filter(({ isPlain }) => !isPlain).map(workEnd),
      };
    });
}
