import { Decimal } from '../units/decimal';
import { convertMeasure, measureUnit, type MeasureUnit } from '../units/measureUnit';
import type { CatalogueUnits } from './catalogueUnits';
import { cellNumber } from './cellNumber';
import type { ReadRow } from './readRows';
import { numberIn } from './rowFacts';

/*
 * Limits beyond which a value looks like a slip of the pen or a wrong unit. Common practice: no hose of the trade's standards bends
 * tighter than twice its outside diameter, carries more than 1,400 bar, goes deeper into a coupling than six bores and 20 mm, or is
 * crimped to less than 0.8 or more than 1.5 of its outside diameter.
 */
const LEAST_BEND = 2;
const HIGHEST_BAR = 1400;
const DEPTH_BORES = 6;
const DEPTH_MM = 20;
const CRIMP_SHARES = [0.8, 1.5] as const;

/** The limits in a catalogue's units. */
export interface SizeLimits {
  readonly pressureSymbol: string;
  readonly highestPressure: number;
  readonly depthMargin: number;
  /** How many of the unit of lengths make one of the unit of crimp diameters. */
  readonly lengthsADiameter: number;
}

/** The limits, turned into a catalogue's units. */
export function sizeLimits({ pressure, length, diameter }: CatalogueUnits): SizeLimits {
  const turned = (value: number, from: MeasureUnit, to: MeasureUnit) => convertMeasure(new Decimal(value), from, to).toNumber();
  return {
    pressureSymbol: pressure.symbol,
    highestPressure: turned(HIGHEST_BAR, measureUnit('pressure', 'bar')!, pressure),
    depthMargin: turned(DEPTH_MM, measureUnit('length', 'mm')!, length),
    lengthsADiameter: turned(1, diameter, length),
  };
}

/** What is noticed in a row: by the key of the column, the sentence. */
export type Noticed = readonly (readonly [key: string, text: string])[];

const rounded = (value: number) => Number(value.toPrecision(6));

/** A working pressure above what any hose of the trade carries. */
export function pressureNote(row: ReadRow, { highestPressure, pressureSymbol }: SizeLimits): Noticed {
  const pressure = numberIn(row, 'workingPressure');
  if (pressure === undefined || pressure <= highestPressure) return [];
  const limit = `${rounded(highestPressure)} ${pressureSymbol}`;
  return [['workingPressure', `Working pressure is ${pressure}, above ${limit}: check the unit`]];
}

/** A depth beyond any coupling's, by the bore of its hose. */
export function depthNote(row: ReadRow, bore: number | undefined, { depthMargin }: SizeLimits): Noticed {
  const depth = numberIn(row, 'insertionDepth');
  const most = bore === undefined ? undefined : cellNumber(DEPTH_BORES * bore + depthMargin);
  if (depth === undefined || most === undefined || depth <= most) return [];
  return [['insertionDepth', `Insertion depth is ${depth}, deeper than 6 bores and 20 mm (${rounded(most)}): check the unit`]];
}

/** Sizes of a hose that contradict each other. */
export function hoseNotes(row: ReadRow, limits: SizeLimits): Noticed {
  const [bore, outside, bend] = ['bore', 'outsideDiameter', 'bendRadius'].map(key => numberIn(row, key));
  const found: (readonly [string, string])[] = [...pressureNote(row, limits)];
  if (outside === undefined) return found;
  if (outside <= bore!) found.push(['outsideDiameter', `Outside diameter is ${outside}, not above the bore ${bore}`]);
  if (bend !== undefined && bend < LEAST_BEND * outside) {
    found.push(['bendRadius', `Bend radius is ${bend}, under 2 outside diameters (${rounded(LEAST_BEND * outside)})`]);
  }
  return found;
}

/** A crimp diameter that cannot belong to the hose's outside diameter. */
export function crimpDiameterNote(row: ReadRow, outside: number | undefined, { lengthsADiameter }: SizeLimits): Noticed {
  const diameter = numberIn(row, 'crimpDiameter');
  if (outside === undefined || diameter === undefined) return [];
  const crimped = cellNumber(diameter * lengthsADiameter);
  const [low, high] = CRIMP_SHARES;
  const isBelow = crimped < cellNumber(low * outside);
  if (!isBelow && crimped <= cellNumber(high * outside)) return [];
  const limit = isBelow ? `below ${low}` : `above ${high}`;
  return [['crimpDiameter', `Crimp diameter is ${diameter}, ${limit} outside diameters of the hose (${outside})`]];
}
