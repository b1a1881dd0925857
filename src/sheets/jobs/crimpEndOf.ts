import type { Catalogue } from '../../core/catalogue/catalogue';
import { crimpSetup, type CrimpSetup } from '../../core/catalogue/crimpSetup';
import { findFitting } from '../../core/catalogue/findPart';
import { partKey } from '../../core/catalogue/partName';
import { trialDial } from '../../core/catalogue/trialDial';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import { lengthIn, type Length, type LengthUnit } from '../../core/units/lengthUnit';
import type { MeasureUnit } from '../../core/units/measureUnit';
import { smallText } from '../table/smallText';
import type { CrimpEnd } from './benchCard';
import type { JobLine, SheetEnd } from './jobLine';

/** Where the set-ups of ends are looked up. */
export interface CrimpSource {
  readonly catalogue: Catalogue | undefined;
  /** Crimper whose own recorded dials win; "" = none. */
  readonly machine: string;
  /** Unit of the card's crimps. */
  readonly unit: LengthUnit;
}

type Facts = Omit<CrimpEnd, 'end' | 'fitting'>;

/** What the job sheet itself says. */
function ofSheet(own: SheetEnd, unit: LengthUnit): Facts {
  const length = (value: Length | undefined) => value && lengthIn(value, unit);
  return {
    ferrule: own.ferrule || undefined,
    die: own.die || undefined,
    dial: own.dial || undefined,
    diameter: length(own.target),
    smallest: length(own.smallest),
    largest: length(own.largest),
    crimpLength: length(own.crimpLength),
    skiveOutside: length(own.skiveOutside),
    skiveInside: length(own.skiveInside),
    insertionDepth: length(own.insertionDepth),
    angle: own.angle,
    source: own.target ? 'job sheet' : undefined,
  };
}

/** A dial to try where the machine has none of its own and the catalogue's are not for it. */
function trialText(catalogue: Catalogue, hose: string, fitting: string, machine: string): string {
  const start = `no dial for ${machine}: make ONE trial piece first`;
  try {
    const { dial, low, high } = trialDial(catalogue, hose, fitting, machine);
    const range = low === undefined || high === undefined ? '' : ` (likely ${Math.floor(low)} … ${Math.ceil(high)})`;
    return `${start}, at dial ${dial}${range}, and measure it before the batch`;
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return `${start}; ${error.message}`;
  }
}

/** The set-up, and why the machine's own dial is not known where its name is no machine of the catalogue. */
function setupOf(catalogue: Catalogue, hose: string, fitting: string, machine: string): [CrimpSetup, problem?: string] {
  try {
    return [crimpSetup(catalogue, hose, fitting, machine || undefined)];
  } catch (error) {
    if (!(error instanceof TradeError) || error.code !== 'notFound' || machine === '') throw error;
    return [{ ...crimpSetup(catalogue, hose, fitting), dial: undefined }, error.message];
  }
}

const SOURCES: Readonly<Record<CrimpSetup['source'], (machine: string) => string>> = {
  MACHINE: machine => `recorded dial of ${machine}, else catalogue`,
  CATALOGUE: () => 'catalogue',
  'NO DIAL': machine => `catalogue, no dial for ${machine}`,
};

/** Target and limits: the sheet's, else the catalogue's; the catalogue's tolerance about the sheet's target where that is all it says. */
function targetOf(own: Facts, setup: CrimpSetup, unit: LengthUnit, from: MeasureUnit) {
  const theirs = lengthIn({ value: new Decimal(setup.crimpDiameter), unit: from }, unit);
  const around = lengthIn({ value: new Decimal(setup.tolerance), unit: from }, unit);
  const diameter = own.diameter ?? theirs;
  const differs = own.diameter && !own.diameter.eq(theirs) ? `the catalogue says ${smallText(theirs, unit)} ${unit}` : undefined;
  return {
    diameter,
    smallest: own.smallest ?? diameter.minus(around),
    largest: own.largest ?? diameter.plus(around),
    differs,
  };
}

function ofCatalogue(own: Facts, line: JobLine, fitting: string, catalogue: Catalogue, source: CrimpSource): Facts {
  const { machine, unit } = source;
  const { units } = catalogue;
  const [setup, problem] = setupOf(catalogue, line.hose, fitting, machine);
  const { crimp, matched, notes, insertionDepth } = setup;
  const length = (value: number | undefined) =>
    value === undefined ? undefined : lengthIn({ value: new Decimal(value), unit: units.length }, unit);
  const isOtherDie = own.die !== undefined && partKey(own.die) !== partKey(setup.die);
  const hasTheirs = !isOtherDie && setup.dial !== undefined;
  const { differs, ...target } = targetOf(own, setup, unit, units.diameter);
  return {
    ferrule: own.ferrule ?? crimp.ferrule,
    die: own.die ?? setup.die,
    dial: own.dial ?? (hasTheirs ? String(setup.dial) : undefined),
    trial: own.dial === undefined && setup.source === 'NO DIAL' ? trialText(catalogue, line.hose, fitting, machine) : undefined,
    ...target,
    largestSpread:
      crimp.largestSpread === undefined
        ? undefined
        : lengthIn({ value: new Decimal(crimp.largestSpread), unit: units.diameter }, unit),
    crimpLength: own.crimpLength ?? length(crimp.crimpLength),
    skiveOutside: own.skiveOutside ?? length(crimp.skiveOutside),
    skiveInside: own.skiveInside ?? length(crimp.skiveInside),
    insertionDepth: own.insertionDepth ?? length(insertionDepth),
    angle: own.angle ?? findFitting(catalogue, fitting).angle,
    remark: [crimp.note, ...notes, differs].filter(Boolean).join('; ') || undefined,
    source: own.source ?? `${SOURCES[setup.source](machine)}, row ${matched}`,
    problem: own.dial === undefined ? problem : undefined,
  };
}

/** An end of a hose that stays without a coupling. */
function isPlain({ ends, overall, cutLength }: JobLine, index: 0 | 1): boolean {
  const { fitting, die, target } = ends[index];
  if (fitting !== '' || die !== '' || target) return false;
  const hasOther = ends[1 - index]!.fitting !== '';
  const isWhole = !overall || (cutLength && lengthIn(overall, 'mm').eq(lengthIn(cutLength, 'mm')));
  return hasOther || isWhole === true;
}

/** One end of a line as it is crimped: what the sheet says wins over the catalogue. */
export function crimpEndOf(line: JobLine, index: 0 | 1, source: CrimpSource): CrimpEnd {
  const end = index === 0 ? 'A' : 'B';
  const { fitting } = line.ends[index];
  const own = ofSheet(line.ends[index], source.unit);
  if (isPlain(line, index)) return { end, fitting, isPlain: true };
  if (!source.catalogue || fitting === '') return { end, fitting, ...own };
  try {
    return { end, fitting, ...ofCatalogue(own, line, fitting, source.catalogue, source) };
  } catch (error) {
    if (!(error instanceof TradeError)) throw error;
    return { end, fitting, ...own, problem: own.diameter ? undefined : error.message };
  }
}
