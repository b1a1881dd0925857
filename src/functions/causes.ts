import { crimpCause as crimpCauseOf } from '../core/quality/causes/crimpCause';
import { TradeError } from '../core/tradeError';
import { Decimal } from '../core/units/decimal';
import { answer, table } from '../cells/answer';
import { column, optionalColumn, rowPlaces, type Column } from '../cells/columns';
import { listRows } from '../cells/lists';
import { number, type CellReader } from '../cells/readers';
import { cellsOfArgument, optionalSingle, single, type Cells } from '../cells/singles';
import { causeTable } from './causeTable';
import { readName, type Name } from './combinationList';
import { readWhen, timesOf } from './crimpWhen';

const readTolerance = number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true, hint: 'enter the tolerance as one number' });
const readDeviation = number({ mayBeDate: true, hint: 'enter the deviation' });

const readConfidence: CellReader<Decimal> = (cell, label) => {
  const value = number({ marks: 'noLength', hint: 'enter a share', like: '0.95' })(cell, label);
  if (value.gt(0.5) && value.lt(1)) return value;
  throw new TradeError('range', label, `is ${value}`, 'it must lie between 0.5 and 1, like 0.95');
};

const readShare: CellReader<Decimal> = (cell, label) => {
  const value = number({ marks: 'noLength', hint: 'enter a share', like: '0.5' })(cell, label);
  if (value.gte(0) && value.lte(1)) return value;
  throw new TradeError('range', label, `is ${value}`, 'it must lie between 0 and 1, like 0.5');
};

/** One tolerance for all, or each crimp's own. */
function toleranceColumn(cells: Cells): Column<Decimal> {
  if (cellsOfArgument(cells).length > 1) return column('tolerance', cells, readTolerance);
  const tolerance = single('tolerance', cells, readTolerance);
  return { ...rowPlaces(), label: 'tolerance', at: () => tolerance };
}

/** Dies by row; a 0 among names in words is a blank that the host turned into 0. */
function diesOf(dies: readonly (Name | undefined)[]): (Name | undefined)[] {
  const inWords = dies.some(die => typeof die?.shown === 'string');
  return dies.map(die => (die?.shown === 0 && inWords ? undefined : die));
}

/** Names as they first came, by their keys. */
function shownBy(names: readonly (Name | undefined)[]): (key: string) => Name['shown'] | undefined {
  const first = new Map<string, Name['shown']>();
  for (const name of names) if (name && !first.has(name.key)) first.set(name.key, name.shown);
  return key => first.get(key);
}

/**
 * Tells what is off now, and since when: a crimping machine, a die, or the settings of single combinations; the fewest causes that explain the crimps.
 * @customfunction CRIMPCAUSE CRIMPCAUSE
 * @param {any[][]} combination Name of the combination (hose and fitting), a column, one crimp a row; all of one machine, 500 names at most.
 * @param {any[][]} deviation Deviation of the crimp, mean of its readings - target, a column (one unit with the tolerance, mm or in).
 * @param {any[][]} tolerance Allowed deviation either way, one value, or a column with that of each crimp (same unit).
 * @param {any[][]} [die] Die of the crimp, a column, or one value: with one die throughout the cause may be machine or die (blank = dies are not told apart).
 * @param {any[][]} [confidence] Confidence of the finding, one value, a fraction between 0.5 and 1 (blank = 0.95).
 * @param {any[][]} [actionShare] Fraction of the tolerance below which nothing is touched, one value from 0 to 1 (blank = 0.5).
 * @param {any[][]} [when] When the crimp was made, a column of dates, times or running numbers (dates as text like 2026-03-14 08:30; a blank in any row = changes with time are not looked for).
 * @returns {any[][]} Table with heading: Combination, Crimps, Mean deviation, Correction (change of diameter wanted, same unit), Finding, Since, Low, High. Row All: what is off, MACHINE (or MACHINE OR DIE), DIE, SETTING joined by +, or IN SPEC, CANNOT TELL, NOT ENOUGH DATA; its mean deviation is what the machine is off now. Then a row for each die where there are two or more, for each combination (its own deviation), for each crimp set aside; after CANNOT TELL what to measure next.
 * Source: fewest causes by a Bayesian linear model; numbers by least squares (NIST/SEMATECH e-Handbook 4.4.3).
 * @example =HOSE.CRIMPCAUSE({"Alder";"Alder";"Birch";"Birch";"Cedar";"Cedar"}, {0.1;0.12;0.11;0.1;0.09;0.11}, 0.05) gives Combination, Crimps, Mean deviation, Correction, Finding, Since, Low, High, All, 6, 0.105, -0.105, MACHINE
 */
export function crimpCause(
  combination: any[][],
  deviation: any[][],
  tolerance: any[][],
  die?: any[][],
  confidence?: any[][],
  actionShare?: any[][],
  when?: any[][],
): any[][] {
  return answer(() => {
    const rows = listRows(
      [column('combination', combination, readName), column('deviation', deviation, readDeviation)],
      [toleranceColumn(tolerance), optionalColumn('die', die, readName), optionalColumn('when', when, readWhen), rowPlaces()],
    );
    const dies = diesOf(rows.map(row => row[3]));
    const times = timesOf(rows.map(row => row[4]));
    const cause = crimpCauseOf({
      crimps: rows.map(([name, value, allowed], index) => ({
        combination: name.key,
        deviation: value.toNumber(),
        tolerance: allowed.toNumber(),
        die: dies[index]?.key,
        time: times[index],
      })),
      confidence: optionalSingle('confidence', confidence, readConfidence)?.toNumber() ?? 0.95,
      actionShare: optionalSingle('action share', actionShare, readShare)?.toNumber() ?? 0.5,
    });
    return table(
      causeTable(cause, {
        combination: shownBy(rows.map(([name]) => name)),
        die: shownBy(dies),
        when: place => rows[place]![4]?.shown,
        row: place => rows[place]![5],
      }),
    );
  });
}
