import { numberOfCell } from '../../cells/sheetCell';
import { gaugeCheck, type GaugeCheck } from '../../core/quality/gaugeCheck';
import { gaugeStudy, type GaugeStudy } from '../../core/quality/gaugeStudy';
import type { Decimal } from '../../core/units/decimal';
import { READ_PLACES } from '../../core/units/decimalPlaces';
import type { CellValue } from '../../workbook/workbook';
import { isFilled } from '../../core/catalogue/headings';

/** Cg and Cgk from which a gauge is taken as capable; share of the tolerance up to which a study is good, and may do. Common practice. */
export const CAPABLE = 1.33;
export const [GOOD_SHARE, LAST_SHARE] = [0.1, 0.3] as const;

const isNumber = (cell: CellValue) => typeof cell === 'number' || (typeof cell === 'string' && /^\s*\d/.test(cell));

function reading(cell: CellValue, label: string): Decimal {
  return numberOfCell(cell, label)!;
}

/** 1, 2, 3, …: numbers of parts or readings, which are no readings. */
const isRunning = (cells: readonly CellValue[]) => cells.length > 1 && cells.every((cell, index) => cell === index + 1);

/** A block without a first row and a first column that only count, or only name. */
function withoutNumbering(values: readonly (readonly CellValue[])[]): readonly (readonly CellValue[])[] {
  const rows = values.filter(row => row.some(cell => isFilled(cell) && isNumber(cell)));
  const isHead = rows.length > 1 && isRunning(rows[0]!.filter(cell => isFilled(cell) && isNumber(cell)));
  const body = isHead ? rows.slice(1) : rows;
  const isSide = (body[0]?.length ?? 0) > 1 && isRunning(body.map(row => row[0]!));
  const isNames = body.some(row => isFilled(row[0]!) && !isNumber(row[0]!));
  return isSide || isNames ? body.map(row => row.slice(1)) : body;
}

/** Selected cells as readings: headings above and names beside them are left out. */
function readingsIn(values: readonly (readonly CellValue[])[]): readonly Decimal[] {
  return withoutNumbering(values).flatMap(row =>
    row.filter(cell => isFilled(cell) && isNumber(cell)).map(cell => reading(cell, 'reading')),
  );
}

/** A gauge check and what it says. */
export interface CheckOfGauge {
  readonly check: GaugeCheck;
  readonly count: number;
  readonly isCapable: boolean;
  /** Says that readings and reference cannot belong together; "" where they can. */
  readonly doubt: string;
}

/** Share of the reference beyond which a reading can hardly be of that piece: no caliper is that far off. */
const FAR = 0.2;
const MOST_NAMED = 5;

function doubtOf(readings: readonly Decimal[], reference: Decimal): string {
  const far = readings.flatMap((each, index) =>
    each.minus(reference).abs().gt(reference.abs().times(FAR)) ? [`${index + 1} (${each.toDecimalPlaces(READ_PLACES)})`] : [],
  );
  if (far.length === 0) return '';
  const which = far.length === readings.length ? `All readings, the first ${readings[0]!.toDecimalPlaces(READ_PLACES)},` : '';
  const some =
    far.length > 1
      ? `Readings ${far.slice(0, MOST_NAMED).join(', ')}${far.length > MOST_NAMED ? ', …' : ''}`
      : `Reading ${far[0]}`;
  const verb = far.length > 1 ? 'differ' : 'differs';
  return `${which || some} ${verb} from the reference ${reference} by more than ${FAR * 100} %: is it a slip of the decimal point?`;
}

/**
 * Gauge check of selected readings of one reference piece.
 * @param tolerance full width that the gauge is to judge
 * @throws TradeError with a sentence: fewer than ten readings, no scatter; Error where none are selected
 */
export function checkOfGauge(values: readonly (readonly CellValue[])[], reference: Decimal, tolerance: Decimal): CheckOfGauge {
  const readings = readingsIn(values);
  if (readings.length === 0) throw new Error('Select the readings first: ten or more of the same reference piece.');
  const check = gaugeCheck(readings, reference, tolerance);
  const isCapable = check.cg.gte(CAPABLE) && check.cgk.gte(CAPABLE);
  return { check, count: readings.length, isCapable, doubt: doubtOf(readings, reference) };
}

/** One person's study and what it says. */
export interface StudyOfGauge {
  readonly study: GaugeStudy;
  readonly parts: number;
  readonly repeats: number;
  readonly finding: string;
}

function findingOf(study: GaugeStudy): string {
  const { shareOfTolerance, shareOfStudy } = study.sources.find(({ source }) => source === 'Gauge')!;
  const share = shareOfTolerance ?? shareOfStudy!;
  const of = shareOfTolerance === undefined ? 'of the study' : 'of the tolerance';
  const per = `${(share * 100).toFixed(1)} % ${of}`;
  if (share <= GOOD_SHARE) return `${per}: good`;
  return share <= LAST_SHARE ? `${per}: may do, depending on the work` : `${per}: not good enough`;
}

/**
 * Study of a gauge by one person: a part a row, its repeated readings side by side; a row or column of names is left out.
 * @param tolerance full width; undefined: shares of the study only
 * @throws TradeError with a sentence: parts that were not measured equally often, no scatter; Error where fewer than two parts are selected
 */
export function studyOfGauge(values: readonly (readonly CellValue[])[], tolerance: Decimal | undefined): StudyOfGauge {
  const rows = withoutNumbering(values);
  if (rows.length < 2) {
    throw new Error('Select the readings of the study first: two parts or more, a part a row with its readings side by side.');
  }
  const readings = rows.flatMap((row, index) =>
    row.filter(isFilled).map((cell, nth) => ({
      part: `${index + 1}`,
      operator: '1',
      reading: reading(cell, `part ${index + 1}, reading ${nth + 1}`).toNumber(),
    })),
  );
  const study = gaugeStudy(readings, tolerance?.toNumber());
  return { study, parts: rows.length, repeats: readings.length / rows.length, finding: findingOf(study) };
}
