import { assembly, type Assembly } from '../../core/catalogue/assembly';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { findFitting, findHose } from '../../core/catalogue/findPart';
import { hoseInUse, type AssemblyUse } from '../../core/catalogue/hoseInUse';
import { partKey } from '../../core/catalogue/partName';
import { TradeError } from '../../core/tradeError';
import type { Decimal } from '../../core/units/decimal';
import type { Length } from '../../core/units/lengthUnit';
import { convertMeasure, type MeasureUnit } from '../../core/units/measureUnit';
import { lengthText } from '../table/lengthText';
import { inUnit } from './inUnit';

/** What a line says of itself, as far as it could be read. */
export interface LineFacts {
  readonly hose: string;
  readonly fittings: readonly [string, string];
  readonly overall: Length | undefined;
  readonly cutLength: Length | undefined;
  readonly allowance: Length | undefined;
  /** Cut-offs of the sheet's own columns. */
  readonly cutOffs: readonly [Length | undefined, Length | undefined];
  readonly bore: Length | undefined;
  readonly temperature: { readonly value: Decimal; readonly unit: MeasureUnit } | undefined;
  readonly fluid: string;
  /** The sheet has a column for couplings: a blank one means plain hose. */
  readonly namesCouplings: boolean;
}

/** What the catalogue says of a line: reasons not to make it, and the rating of its weakest part. */
export interface CatalogueVerdict {
  readonly reasons: readonly string[];
  readonly assembly: Assembly | undefined;
}

const sentenceOf = (error: unknown): string => {
  if (error instanceof TradeError) return error.message;
  throw error;
};

function attempt<T>(reasons: string[], work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    reasons.push(sentenceOf(error));
    return undefined;
  }
}

/** Heat and fluid of a line, as the catalogue takes them. */
function conditionsOf({ units }: Catalogue, { temperature, fluid }: LineFacts): AssemblyUse {
  return {
    // A catalogue without any temperature has none to check against.
    temperature: temperature && units.temperature && convertMeasure(temperature.value, temperature.unit, units.temperature),
    fluid: fluid === '' ? undefined : fluid,
  };
}

/** Parts that are not in the catalogue, and what ASSEMBLY says of the rest. */
export function judgeParts(catalogue: Catalogue | undefined, line: LineFacts): CatalogueVerdict {
  const reasons: string[] = [];
  if (!catalogue) return { reasons, assembly: undefined };
  const [a, b] = line.fittings;
  const { hose, overall } = line;
  if (a === '' || b === '') {
    const found = attempt(reasons, () => findHose(catalogue, hose));
    // A hose alone has limits of heat and fluid, too.
    if (found) reasons.push(...hoseInUse(catalogue, found, conditionsOf(catalogue, line)).wrong);
    for (const name of [a, b]) if (name !== '') attempt(reasons, () => findFitting(catalogue, name));
    return { reasons, assembly: undefined };
  }
  if (!overall && !line.cutLength) return { reasons, assembly: undefined };
  const { units } = catalogue;
  const found = attempt(reasons, () => {
    const known = overall ? inUnit(overall, units.length) : overallOf(catalogue, line);
    return assembly(catalogue, hose, a, b, known, conditionsOf(catalogue, line));
  });
  return { reasons: [...reasons, ...(found?.wrong ?? [])], assembly: found };
}

/** The overall length that a stated cut length gives, in the catalogue's unit. */
function overallOf(catalogue: Catalogue, { cutLength, fittings }: LineFacts): Decimal {
  const { length } = catalogue.units;
  return fittings.reduce((sum, name) => sum.plus(findFitting(catalogue, name).cutOff), inUnit(cutLength!, length));
}

/** Both cut-offs in a unit: the sheet's own, else the catalogue's; undefined where neither says. */
function cutOffsIn(unit: MeasureUnit, catalogue: Catalogue | undefined, line: LineFacts): Decimal[] | undefined {
  const found = line.cutOffs.map((own, index) => {
    if (own) return inUnit(own, unit);
    const name = line.fittings[index]!;
    if (name === '' && !line.namesCouplings) return undefined;
    if (name === '') return inUnit({ value: line.overall!.value.times(0), unit }, unit);
    const part = catalogue?.index.fittings.get(partKey(name))?.row;
    return part && catalogue
      ? convertMeasure(line.overall!.value.times(0).plus(part.cutOff), catalogue.units.length, unit)
      : undefined;
  });
  return found.every(each => each !== undefined) ? (found as Decimal[]) : undefined;
}

/** Where no cut-offs are known: couplings take some of the length, never nearly all of it, and hardly add to it. */
const LEAST_SHARE = 0.1;
const MOST_SHARE = 1.2;

function unlikelyCut({ value, unit }: Length, overall: Decimal): readonly string[] {
  if (value.gte(overall.times(LEAST_SHARE)) && value.lte(overall.times(MOST_SHARE))) return [];
  const text = (length: Decimal) => `${lengthText(length, unit.symbol)} ${unit.symbol}`;
  return [`cut length ${text(value)} cannot belong to an overall length of ${text(overall)}: correct one of them`];
}

/**
 * Why the sheet's own lengths cannot be right: a cut that disagrees with overall length less cut-offs plus the row's allowance by more
 * than the bench step, or that is no shorter than it may be.
 */
export function judgeLengths(catalogue: Catalogue | undefined, line: LineFacts, step: Length): readonly string[] {
  const { overall, cutLength, allowance } = line;
  if (!overall || !cutLength) return [];
  const { unit } = cutLength;
  const cutOffs = cutOffsIn(unit, catalogue, line);
  if (!cutOffs) return unlikelyCut(cutLength, inUnit(overall, unit));
  const due = cutOffs
    .reduce((rest, each) => rest.minus(each), inUnit(overall, unit))
    .plus(allowance ? inUnit(allowance, unit) : 0);
  const apart = cutLength.value.minus(due).abs();
  if (apart.lte(inUnit(step, unit))) return [];
  const text = (value: Decimal) => lengthText(value, unit.symbol);
  return [
    `cut length ${text(cutLength.value)} ${unit.symbol} disagrees with overall length less cut-offs, ${text(due)} ${unit.symbol}: correct one of them`,
  ];
}
