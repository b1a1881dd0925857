import { gaugeCheck as gaugeCheckOf } from '../core/quality/gaugeCheck';
import { gaugeStudy as gaugeStudyOf } from '../core/quality/gaugeStudy';
import { TradeError } from '../core/tradeError';
import { answer, table } from '../cells/answer';
import { column } from '../cells/columns';
import { readDiameter } from '../cells/crimpReaders';
import { listRows } from '../cells/lists';
import { number } from '../cells/readers';
import { optionalSingle, single } from '../cells/singles';
import { readName } from './combinationList';
import { pieceReadings } from './pieceReadings';

const readWidth = number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true, hint: 'enter the full width of the tolerance' });

/**
 * Checks a caliper on a reference piece of known size: how far it is off, how far its readings scatter, and whether that is little enough
 * for a tolerance.
 * @customfunction GAUGECHECK GAUGECHECK
 * @param {any[][]} readings Readings of ONE reference piece, ten or more, a column, a row or a block (one unit for all, mm or in).
 * @param {any[][]} reference Known size of the reference piece, one value (same unit).
 * @param {any[][]} tolerance Full width of the tolerance to be judged with this caliper, one value (same unit).
 * @returns {any[][]} One row: bias (mean - reference), standard deviation s, Cg = 0.2 T / 6 s, Cgk = (0.1 T - |bias|) / 3 s. #VALUE! with fewer than ten readings, or where they do not differ.
 * Source: form of ISO 22514-7, from memory.
 * @example =HOSE.GAUGECHECK({25.01,24.99,25.01,25,25.02,25,24.99,25.01,25,25}, 25, 0.24) gives 0.003, 0.00949, 0.84327, 0.73786
 */
export function gaugeCheck(readings: any[][], reference: any[][], tolerance: any[][]): any[][] {
  return answer(() => {
    const known = single('reference', reference, readDiameter);
    const { bias, s, cg, cgk } = gaugeCheckOf(pieceReadings(readings), known, single('tolerance', tolerance, readWidth));
    return table([[bias, s, cg, cgk]]);
  });
}

/**
 * Gauge study: how much of the variation comes from the caliper, from who measures, and from the parts.
 * @customfunction GAUGESTUDY GAUGESTUDY
 * @param {any[][]} part Name of the part measured, a column, one reading a row.
 * @param {any[][]} operator Name of the person who measured, a column; each measures every part equally often; with one person only the rows of reproducibility stay blank.
 * @param {any[][]} reading Reading, a column (one unit with the tolerance, mm or in); deviations may be negative.
 * @param {any[][]} [tolerance] Full width of the tolerance, one value (same unit; blank = share of tolerance not asked).
 * @returns {any[][]} Table with heading: Source, Variance, Share of study, Share of tolerance (shares of standard deviations, 6 of them to the tolerance, as fractions); rows Repeatability, Reproducibility, Gauge, Part, Total, Distinct categories. #VALUE! says whose readings are missing.
 * Source: AIAG, Measurement Systems Analysis, 4th ed., ANOVA method.
 * @example =HOSE.GAUGESTUDY({1;1;1;1;2;2;2;2}, {"A";"A";"B";"B";"A";"A";"B";"B"}, {1;2;1;2;5;6;5;6}) gives Source, Variance, Share of study, Share of tolerance, Repeatability, 0.4
 */
export function gaugeStudy(part: any[][], operator: any[][], reading: any[][], tolerance?: any[][]): any[][] {
  return answer(() => {
    const rows = listRows(
      [
        column('part', part, readName),
        column('operator', operator, readName),
        column('reading', reading, number({ mayBeDate: true, hint: 'enter the caliper reading' })),
      ],
      [],
    );
    const readings = rows.map(([{ shown: p }, { shown: o }, value]) => {
      return { part: String(p), operator: String(o), reading: value.toNumber() };
    });
    if (readings.every(row => row.reading >= 0) && readings.some(row => row.reading === 0)) {
      throw new TradeError('blank', 'reading', 'is blank or zero', 'take all readings of the study');
    }
    const study = gaugeStudyOf(readings, optionalSingle('tolerance', tolerance, readWidth)?.toNumber());
    return table([
      ['Source', 'Variance', 'Share of study', 'Share of tolerance'],
      ...study.sources.map(row => [row.source, row.variance, row.shareOfStudy, row.shareOfTolerance]),
      ['Distinct categories', study.distinctCategories, '', ''],
    ]);
  });
}
