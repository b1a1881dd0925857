import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Hose } from '../../core/catalogue/tables/hosesTable';
import { Decimal } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import { measured } from './measured';
import { shownLength } from './threadAdvice';

/** What somebody measured on a hose, as typed; one of the two is enough. */
export interface HoseFields {
  readonly bore: string;
  readonly outside: string;
  readonly unit: LengthUnit;
}

/** A hose that it may be, ready to be shown. */
export interface HoseCandidate {
  readonly hose: string;
  /** `bore 12.7 mm (+0.1 mm)`, `outside diameter not stated`. */
  readonly sizes: readonly string[];
  /** Working pressure with its unit. */
  readonly pressure: string;
}

/** Hoses of the catalogue that a measured one may be; nearest first. */
export type IdentifiedHose =
  | { readonly kind: 'blank' }
  | { readonly kind: 'mistake'; readonly field: 'bore' | 'outside'; readonly sentence: string }
  | { readonly kind: 'none'; readonly sentence: string }
  | { readonly kind: 'found'; readonly candidates: readonly HoseCandidate[] };

/** Share of a size by which a hose may be off. Tolerances of the standards for hydraulic hose are narrower: common practice. */
const NEAR = new Decimal('0.1');
const SHOWN = 12;

interface Size {
  readonly name: string;
  readonly measured: Decimal | undefined;
  readonly field: 'bore' | 'outsideDiameter';
}

interface Compared {
  readonly row: Hose;
  readonly sizes: readonly string[];
  /** Largest share by which a size is off. */
  readonly off: Decimal;
  readonly unstated: number;
}

function compared(row: Hose, sizes: readonly Size[], unit: LengthUnit, { units }: Catalogue): Compared {
  const texts: string[] = [];
  let off = new Decimal(0);
  let unstated = 0;
  for (const { name, measured: own, field } of sizes) {
    if (own === undefined) continue;
    const stated = row[field];
    if (stated === undefined) {
      unstated += 1;
      texts.push(`${name} not stated`);
      continue;
    }
    const size = lengthIn({ value: new Decimal(stated), unit: units.length }, unit);
    const difference = own.minus(size);
    off = Decimal.max(off, difference.abs().div(size));
    const sign = difference.isPositive() && !difference.isZero() ? '+' : '';
    texts.push(`${name} ${shownLength(size, unit)} (${sign}${shownLength(difference, unit)})`);
  }
  return { row, sizes: texts, off, unstated };
}

/** Finds the hoses of a catalogue by bore and outside diameter: those of which all is stated first, then by how far they are off. */
export function identifyHose({ bore, outside, unit }: HoseFields, catalogue: Catalogue): IdentifiedHose {
  const [inner, outer] = [measured(bore, unit), measured(outside, unit)];
  if (inner.kind === 'mistake') return { kind: 'mistake', field: 'bore', sentence: inner.sentence };
  if (outer.kind === 'mistake') return { kind: 'mistake', field: 'outside', sentence: outer.sentence };
  if (inner.kind === 'blank' && outer.kind === 'blank') return { kind: 'blank' };
  const sizes: readonly Size[] = [
    { name: 'bore', measured: inner.kind === 'value' ? inner.value : undefined, field: 'bore' },
    { name: 'outside diameter', measured: outer.kind === 'value' ? outer.value : undefined, field: 'outsideDiameter' },
  ];
  if (inner.kind === 'value' && outer.kind === 'value' && outer.value.lte(inner.value)) {
    return { kind: 'mistake', field: 'outside', sentence: 'Not above the bore' };
  }
  const asked = sizes.filter(each => each.measured !== undefined).length;
  const near = catalogue.hoses
    .map(row => compared(row, sizes, unit, catalogue))
    .filter(({ off, unstated }) => unstated < asked && off.lte(NEAR))
    .sort((a, b) => a.unstated - b.unstated || a.off.cmp(b.off));
  if (near.length === 0) return { kind: 'none', sentence: 'No hose of the catalogue is within 10 % of that.' };
  const pressure = catalogue.units.pressure.symbol;
  return {
    kind: 'found',
    candidates: near.slice(0, SHOWN).map(({ row, sizes: texts }) => ({
      hose: row.hose,
      sizes: texts,
      pressure: `${row.workingPressure} ${pressure}`,
    })),
  };
}
