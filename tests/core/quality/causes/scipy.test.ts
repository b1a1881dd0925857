import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { candidateCauses } from '../../../../src/core/quality/causes/candidateCauses';
import type { Cause } from '../../../../src/core/quality/causes/cause';
import { causeModels } from '../../../../src/core/quality/causes/causeModel';
import { causeNumbers } from '../../../../src/core/quality/causes/causeNumbers';
import { causeProducts } from '../../../../src/core/quality/causes/causeProducts';
import { crimpScatter } from '../../../../src/core/quality/causes/crimpScatter';
import { crimpSeries } from '../../../../src/core/quality/causes/crimpSeries';
import { timeStretches } from '../../../../src/core/quality/causes/timeStretches';

interface ComputedModel {
  readonly causes: readonly Pick<Cause, 'kind' | 'of' | 'boundary'>[];
  readonly better: number;
  readonly coefficients: readonly number[];
  readonly variances: readonly number[];
  readonly offset: number;
  readonly half: number;
  readonly df: number;
  readonly own: readonly number[];
}
interface ComputedCase {
  readonly tolerance: number;
  readonly scatter: number;
  readonly crimps: readonly (readonly [combination: string, die: string, time: number, deviation: number])[];
  readonly models: readonly ComputedModel[];
}

// Computed in SciPy and NumPy by tests/cases/crimpCause/causes.py, independent of the sources.
const { cases } = JSON.parse(readFileSync(join(__dirname, '../../../cases/crimpCause/causes.json'), 'utf8')) as {
  cases: ComputedCase[];
};

/** A list with its candidates, and the models of them. */
function prepared({ crimps, tolerance }: ComputedCase) {
  const series = crimpSeries(
    crimps.map(([combination, die, when, deviation]) => ({ combination, die, time: when, deviation, tolerance })),
  );
  const time = timeStretches(series.time!);
  const scatter = crimpScatter(series);
  const causes = candidateCauses(series, time, scatter);
  const models = causeModels(causeProducts(causes, series, time, scatter), new Float64Array(causes.length));
  const numbersOf = (wanted: ComputedModel['causes']) =>
    wanted.map(({ kind, of, boundary }) => {
      const found = causes.findIndex(cause => cause.kind === kind && cause.of === of && cause.boundary === boundary);
      if (found < 0) throw new Error(`no candidate ${kind} ${of} ${boundary}`);
      return found;
    });
  return { series, time, scatter, causes, models, numbersOf };
}

test.each(cases.map((one, index) => ({ one, index })))('list $index: scatter, fit, coefficients and numbers', ({ one }) => {
  const { series, time, scatter, causes, models, numbersOf } = prepared(one);
  expect(scatter).toBeCloseTo(one.scatter, 9);
  const empty = models.fit(models.solve([]));
  for (const wanted of one.models) {
    const numbers = numbersOf(wanted.causes);
    const solved = models.solve(numbers);
    expect(empty - models.fit(solved)).toBeCloseTo(wanted.better, 6);
    const only = (index: number) => numbers.map((_, other) => (other === index ? 1 : 0));
    expect([...models.coefficients(solved)]).toEqual(wanted.coefficients.map(value => expect.closeTo(value, 7)));
    expect(numbers.map((_, index) => models.variance(solved, only(index)))).toEqual(
      wanted.variances.map(value => expect.closeTo(value, 7)),
    );
    const {
      machine,
      combinations,
      scatter: within,
    } = causeNumbers(
      series,
      time,
      numbers.map(number => causes[number]!),
      0.95,
    );
    expect(within.df).toBe(wanted.df);
    expect(machine!.offset).toBeCloseTo(wanted.offset, 8);
    expect(machine!.interval![1] - machine!.offset).toBeCloseTo(wanted.half, 8);
    expect(combinations.map(each => each!.offset)).toEqual(wanted.own.map(value => expect.closeTo(value, 8)));
  }
});
