import { shownText } from '../quotedText';
import { TradeError } from '../tradeError';
import { fUpperTail } from './fUpperTail';
import { mean } from './mean';
import { squaresAroundMean } from './squaresAroundMean';
import { sum } from './sum';

const POOL_ABOVE = 0.25;
const CATEGORY_FACTOR = 1.41;
const TOLERANCE_SIGMAS = 6;

/** One measurement of a gauge study. */
export interface GaugeReading {
  /** Names as they are to be shown; told apart without case. */
  readonly part: string;
  readonly operator: string;
  readonly reading: number;
}

/** A source of variation. */
export interface GaugeSource {
  readonly source: 'Repeatability' | 'Reproducibility' | 'Gauge' | 'Part' | 'Total';
  /** Undefined for the reproducibility of one operator, which nobody measured. */
  readonly variance: number | undefined;
  /** Share of the total standard deviation, 0 … 1. */
  readonly shareOfStudy: number | undefined;
  /** 6 standard deviations ÷ full tolerance; undefined without tolerance. */
  readonly shareOfTolerance: number | undefined;
}

/** Result of a gauge study. */
export interface GaugeStudy {
  readonly sources: readonly GaugeSource[];
  /** How many classes of parts the gauge tells apart, at least 1; undefined where the gauge shows no variation at all. */
  readonly distinctCategories: number | undefined;
}

/** Sums of squares of a balanced crossed study. */
export interface GaugeAnova {
  readonly part: { readonly squares: number; readonly df: number };
  readonly operator: { readonly squares: number; readonly df: number };
  readonly interaction: { readonly squares: number; readonly df: number };
  readonly repeatability: { readonly squares: number; readonly df: number };
}

interface Variances {
  readonly repeatability: number;
  readonly reproducibility: number | undefined;
  readonly part: number;
}

type Layout = readonly (readonly (readonly number[])[])[];

const named = (names: readonly string[]) =>
  [...new Map(names.map(name => [name.toLowerCase(), name] as const).reverse()).values()].reverse();

/** Readings by part and operator; throws where a combination misses readings. */
function layOut(readings: readonly GaugeReading[]): Layout {
  const parts = named(readings.map(({ part }) => part));
  const operators = named(readings.map(({ operator }) => operator));
  const need = (what: string, count: number) => {
    if (count < 2) throw new TradeError('shape', what, `came as ${count}`, 'a gauge study needs two or more');
  };
  need('parts', parts.length);
  const same = (a: string, b: string) => a.toLowerCase() === b.toLowerCase();
  const layout = parts.map(part =>
    operators.map(operator =>
      readings.filter(row => same(row.part, part) && same(row.operator, operator)).map(({ reading }) => reading),
    ),
  );
  const repeats = Math.max(...layout.flat().map(cell => cell.length));
  layout.forEach((row, i) =>
    row.forEach((cell, j) => {
      if (cell.length === repeats) return;
      const received = `has ${cell.length} of ${repeats} readings`;
      const advice = 'every operator measures every part equally often; add what is missing';
      throw new TradeError(
        'shape',
        `part ${shownText(String(parts[i]))}, operator ${shownText(String(operators[j]))}`,
        received,
        advice,
      );
    }),
  );
  need('readings of a part by one operator', repeats);
  return layout;
}

/** Two-way analysis of variance of a balanced layout [part][operator][repeat]. */
export function gaugeAnova(layout: Layout): GaugeAnova {
  const [p, o, r] = [layout.length, layout[0]!.length, layout[0]![0]!.length];
  const cells = layout.map(row => row.map(mean));
  const partMeans = cells.map(mean);
  const operatorMeans = cells[0]!.map((_, j) => mean(cells.map(row => row[j]!)));
  const grand = mean(partMeans);
  const apart = cells.flatMap((row, i) => row.map((cell, j) => (cell - partMeans[i]! - operatorMeans[j]! + grand) ** 2));
  return {
    part: { squares: o * r * squaresAroundMean(partMeans), df: p - 1 },
    operator: { squares: p * r * squaresAroundMean(operatorMeans), df: o - 1 },
    interaction: { squares: r * sum(apart), df: (p - 1) * (o - 1) },
    repeatability: { squares: sum(layout.flat().map(squaresAroundMean)), df: p * o * (r - 1) },
  };
}

/** One operator: parts against repeats, without a reproducibility. */
function variancesOfOne(layout: Layout): Variances {
  const { part, repeatability } = gaugeAnova(layout);
  const error = repeatability.squares / repeatability.df;
  const between = (part.squares / part.df - error) / layout[0]![0]!.length;
  return { repeatability: error, reproducibility: undefined, part: Math.max(0, between) };
}

function variances(layout: Layout): Variances {
  const [p, o, r] = [layout.length, layout[0]!.length, layout[0]![0]!.length];
  if (o === 1) return variancesOfOne(layout);
  const { part, operator, interaction, repeatability } = gaugeAnova(layout);
  const ratio = interaction.squares / interaction.df / (repeatability.squares / repeatability.df);
  const pooled = interaction.squares === 0 || fUpperTail(ratio, interaction.df, repeatability.df) > POOL_ABOVE;
  const error = pooled
    ? (interaction.squares + repeatability.squares) / (interaction.df + repeatability.df)
    : repeatability.squares / repeatability.df;
  const against = pooled ? error : interaction.squares / interaction.df;
  const component = (meanSquare: number, base: number, count: number) => Math.max(0, (meanSquare - base) / count);
  const byOperator = component(operator.squares / operator.df, against, p * r);
  const together = pooled ? 0 : component(against, error, r);
  return {
    repeatability: error,
    reproducibility: byOperator + together,
    part: component(part.squares / part.df, against, o * r),
  };
}

/**
 * Gauge repeatability and reproducibility by analysis of variance; the interaction is pooled with the repeatability where p > 0.25,
 * variances estimated below 0 count as 0. With one operator it is a one-way analysis, and reproducibility stays open.
 * @param readings every operator measures every part equally often, twice or more
 * @param tolerance full width of the tolerance, in the unit of the readings
 * @throws TradeError `shape` that names the part and operator whose readings are missing; `impossible` where nothing varies
 * Source: AIAG, Measurement Systems Analysis, 4th ed. (2010), ANOVA method.
 */
export function gaugeStudy(readings: readonly GaugeReading[], tolerance?: number): GaugeStudy {
  const { repeatability, reproducibility, part } = variances(layOut(readings));
  const gauge = repeatability + (reproducibility ?? 0);
  const total = gauge + part;
  if (total === 0) {
    throw new TradeError('impossible', 'readings', 'show no scatter', 'use parts that differ and a finer resolution');
  }
  const source = (name: GaugeSource['source'], variance: number | undefined): GaugeSource => ({
    source: name,
    variance,
    shareOfStudy: variance === undefined ? undefined : Math.sqrt(variance / total),
    shareOfTolerance:
      variance === undefined || tolerance === undefined ? undefined : (TOLERANCE_SIGMAS * Math.sqrt(variance)) / tolerance,
  });
  return {
    sources: [
      source('Repeatability', repeatability),
      source('Reproducibility', reproducibility),
      source('Gauge', gauge),
      source('Part', part),
      source('Total', total),
    ],
    distinctCategories: gauge === 0 ? undefined : Math.max(1, Math.floor(CATEGORY_FACTOR * Math.sqrt(part / gauge))),
  };
}
