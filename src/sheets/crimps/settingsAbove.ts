import { measureOfCell, nameOfCell, numberOfCell } from '../../cells/sheetCell';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import { measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import type { Length } from '../../core/units/lengthUnit';
import type { FoundTable } from '../table/findTables';
import type { CellPlace } from '../../workbook/a1';
import { headingForms, statedUnit } from '../table/heading';
import { HEADING_WORDS } from '../table/headingWords';
import { refusePercent } from '../table/refusePercent';
import type { SheetCells } from '../table/sheetCells';
import { wholeWidth } from './crimpText';

const LENGTHS = ['target', 'tolerance', 'toleranceWidth', 'largestSpread', 'uncertainty', 'step', 'perTurn'] as const;
const DIALS = ['lowest', 'highest', 'largestMove'] as const;
type LengthName = (typeof LENGTHS)[number];
type DialName = (typeof DIALS)[number];

/** A number that is stated once above a table. */
interface Stated {
  readonly name: LengthName | DialName;
  readonly label: string;
  readonly row: number;
  readonly column: number;
  /** As its label says it, or the cell behind the number; undefined where neither does. */
  readonly unit: MeasureUnit | undefined;
}

/** `Tolerance, either way (mm)`: the remark says nothing about what it is. */
const withoutRemark = (label: string) => label.replace(/, *(?:either way|plus or minus)/i, '');

function statedIn(cells: SheetCells, row: number, column: number): Stated | undefined {
  const label = cells.value(row, column);
  if (typeof label !== 'string' || label.trim() === '') return undefined;
  const beside = cells.value(row, column + 1);
  if (typeof beside === 'object' || nameOfCell(beside) === '') return undefined;
  const plain = withoutRemark(label);
  const name = [...LENGTHS, ...DIALS].find(each => headingForms(plain).some(form => HEADING_WORDS[each].exact.test(form)));
  const behind = cells.value(row, column + 2);
  const unit = statedUnit(plain, 'length').unit ?? (typeof behind === 'string' ? measureUnit('length', behind) : undefined);
  return name && { name, label, row, column: column + 1, unit };
}

/** The labels above a table with a number beside them, the nearest first; headings of other tables are passed over. */
export function statedAbove(cells: SheetCells, { block }: FoundTable, others: readonly FoundTable[]): readonly Stated[] {
  const isOther = (row: number) => others.some(({ block: each }) => row === each.row);
  const found = new Map<string, Stated>();
  for (let row = block.row - 1; row >= cells.used.row; row--) {
    if (isOther(row)) continue;
    for (let column = cells.used.column; column <= cells.lastColumn; column++) {
      const stated = statedIn(cells, row, column);
      if (stated && !found.has(stated.name)) found.set(stated.name, stated);
    }
  }
  return [...found.values()];
}

/** What is stated once above a table: lengths with their units, and dials. */
export interface SettingsAbove {
  readonly lengths: Readonly<Partial<Record<Exclude<LengthName, 'toleranceWidth'>, Length>>>;
  readonly dials: Readonly<Partial<Record<DialName, Decimal>>>;
  /** Cells of the lengths. */
  readonly cells: Readonly<Partial<Record<LengthName, CellPlace>>>;
  /** Sentences about numbers that cannot be read, or are read otherwise than somebody might think. */
  readonly problems: readonly string[];
}

export const NOTHING_ABOVE: SettingsAbove = { lengths: {}, dials: {}, cells: {}, problems: [] };

/**
 * Reads the numbers that are stated above a table.
 * @param unit of the table's readings, for labels that name none
 */
export function settingsAbove(cells: SheetCells, stated: readonly Stated[], unit: MeasureUnit | undefined): SettingsAbove {
  const lengths: { -readonly [Name in keyof SettingsAbove['lengths']]: Length | undefined } = {};
  const dials: Partial<Record<DialName, Decimal>> = {};
  const places: Partial<Record<LengthName, CellPlace>> = {};
  const problems: string[] = [];
  for (const { name, label, row, column, unit: own } of stated) {
    const cell = cells.value(row, column);
    try {
      if (name === 'lowest' || name === 'highest' || name === 'largestMove') {
        const value = numberOfCell(cell, label, { sign: 'any' });
        if (value) dials[name] = value;
      } else {
        const sign = name === 'step' ? ('any' as const) : ('positive' as const);
        const format = cells.format(row, column);
        refusePercent(cell, format, label);
        const rules = { format, sign, eitherWay: name === 'tolerance' };
        const value = measureOfCell(cell, label, 'length', own ?? unit, rules);
        if (value) places[name] = { row, column };
        if (value && name === 'toleranceWidth') {
          lengths.tolerance ??= { ...value, value: value.value.div(2) };
          problems.push(`Above the table: ${wholeWidth(label)}`);
        } else if (value && name !== 'toleranceWidth') lengths[name] = value;
      }
    } catch (error) {
      if (!(error instanceof TradeError)) throw error;
      problems.push(`Above the table: ${error.message}.`);
    }
  }
  return { lengths, dials, cells: places, problems };
}
