import { readRatingFormula } from '../catalogue/ratingDecimals';
import { FLUID_NOT_CHECKED, HOSE_ALONE, NO_DERATING, NO_TEMPERATURES, NOT_DERATED } from '../jobs/lineRating';
import type { QuoteLine } from '../jobs/quoteLine';
import { isPlainHose } from './plainHose';
import type { QuoteColumn, QuoteLayout, QuoteSide } from './quoteLayout';

/** What the ratings of all lines have in common. */
export interface RatingContext {
  readonly layout: QuoteLayout;
  readonly catalogue: string;
  /** The hoses of the table Derating, as a formula names them; undefined where there is no such table. */
  readonly deratedHoses: string | undefined;
  readonly temperatureUnit: string | undefined;
  /** With how many decimals ratings are read; undefined: as they are. */
  readonly ratingDecimals: number | undefined;
}

/** Formulas of a line, without `=`. */
export interface RatingFormulas {
  /** OK, or what is wrong with it. */
  readonly check: string;
  /** Of the weakest part at the line's temperature; blank where it is not known. */
  readonly pressure: string;
  /** What that rests on, in words. */
  readonly basis: string;
}

/** ASSEMBLY of a line at its temperature and with its fluid. */
function assemblyCall({ layout, catalogue }: RatingContext, on: QuoteSide, row: number): string {
  const parts = (['hose', 'fittingA', 'fittingB', 'overall'] as const).map(column => layout.cell(on, column, row));
  const use = (['temperature', 'fluid'] as const).map(column => (layout.has(column) ? layout.cell(on, column, row) : ''));
  return `HOSE.ASSEMBLY(${[catalogue, ...parts, ...use].join(',').replace(/,+$/, '')})`;
}

/** `at 80 °C, no derating stated; fluid not checked` */
function basisFormula({ layout, deratedHoses, temperatureUnit }: RatingContext, row: number): string {
  const cell = (column: QuoteColumn) => layout.cell('quote', column, row);
  const same = `SUMPRODUCT((LOWER(TRIM(${deratedHoses}))=LOWER(TRIM(${cell('hose')})))*1)`;
  const derating = deratedHoses === undefined ? `", ${NO_DERATING}"` : `IF(${same}=0,", ${NO_DERATING}","")`;
  const without = `"${temperatureUnit === undefined ? NO_TEMPERATURES : NOT_DERATED}"`;
  const heat = layout.has('temperature')
    ? `IF(LEN(${cell('temperature')})=0,${without},"at "&ROUND(${cell('temperature')},1)&" ${temperatureUnit}"&${derating})`
    : without;
  const fluid = layout.has('fluid')
    ? `IF(LEN(${cell('fluid')})=0,"${FLUID_NOT_CHECKED}",${cell('fluid')})`
    : `"${FLUID_NOT_CHECKED}"`;
  return `${heat}&"; "&${fluid}`;
}

/** Whether a line may be made, its rating, and what that rests on. Whether a hose alone may be used so was said when the lines were read. */
export function ratingFormulas(context: RatingContext, line: QuoteLine, row: number): RatingFormulas {
  const { layout, catalogue } = context;
  if (isPlainHose(line)) {
    const check = `IF(ISNUMBER(HOSE.HOSEDATA(${catalogue},${layout.cell('costs', 'hose', row)},"bore")),"OK","")`;
    return { check, pressure: '""', basis: `"${HOSE_ALONE}; "&${basisFormula(context, row)}` };
  }
  const weakest = readRatingFormula(`INDEX(${assemblyCall(context, 'quote', row)},1,2)`, context.ratingDecimals);
  const { lowerPressure } = line;
  return {
    check: `INDEX(${assemblyCall(context, 'costs', row)},1,4)`,
    pressure: lowerPressure ? `IF(ISNUMBER(${weakest}),MIN(${weakest},${lowerPressure}),"")` : weakest,
    basis: `${basisFormula(context, row)}${lowerPressure ? '&"; the job sheet’s lower pressure"' : ''}`,
  };
}
