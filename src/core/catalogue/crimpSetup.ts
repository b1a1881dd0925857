import type { Catalogue } from './catalogue';
import { catalogueDialsHold } from './catalogueDials';
import { crimpFor } from './crimpFor';
import { machineDial } from './machineDial';
import { partKey } from './partName';
import type { Crimp } from './tables/crimpsTable';

/** Whose dial it is: the machine's own recorded one, the catalogue's, or none since the catalogue's dials are not for the machine. */
export type DialSource = 'MACHINE' | 'CATALOGUE' | 'NO DIAL';

/** What to set a crimper to. Diameters are in the catalogue's unit of crimp diameters, the depth in that of lengths. */
export interface CrimpSetup {
  readonly die: string;
  /** Undefined where `source` is `NO DIAL`. */
  readonly dial: number | undefined;
  readonly crimpDiameter: number;
  readonly tolerance: number;
  readonly insertionDepth: number | undefined;
  readonly source: DialSource;
  /** The part or pattern of the row that counted. */
  readonly matched: string;
  readonly crimp: Crimp;
  /** What the user should know besides, e.g. insertion depths that differ. */
  readonly notes: readonly string[];
}

type Dial = Pick<CrimpSetup, 'dial' | 'source'>;

function dialOf(catalogue: Catalogue, crimp: Crimp, hose: string, fitting: string, machine: string | undefined): Dial {
  if (machine === undefined) return { dial: crimp.dial, source: 'CATALOGUE' };
  const own = machineDial(catalogue, machine, crimp.die, hose, fitting)?.dial;
  if (own !== undefined) return { dial: own, source: 'MACHINE' };
  return catalogueDialsHold(catalogue, machine)
    ? { dial: crimp.dial, source: 'CATALOGUE' }
    : { dial: undefined, source: 'NO DIAL' };
}

/**
 * Set-up for a hose and a fitting. A machine's own recorded dial for the row's die wins over the catalogue's, which counts only for machines
 * that it was made for; the crimp row's insertion depth wins over the fitting's.
 * @throws TradeError `notApproved` "no crimp data for …: do not assemble"; `notFound` for an unknown machine, or one whose row was left out
 */
export function crimpSetup(catalogue: Catalogue, hose: string, fitting: string, machine?: string): CrimpSetup {
  const { crimp, matched } = crimpFor(catalogue, hose, fitting);
  const depth = catalogue.index.fittings.get(partKey(fitting))?.row?.insertionDepth;
  const { dial, source } = dialOf(catalogue, crimp, hose, fitting, machine);
  const differs = crimp.insertionDepth !== undefined && depth !== undefined && crimp.insertionDepth !== depth;
  return {
    die: crimp.die,
    dial,
    crimpDiameter: crimp.crimpDiameter,
    tolerance: crimp.tolerance,
    insertionDepth: crimp.insertionDepth ?? depth,
    source,
    matched,
    crimp,
    notes: differs
      ? [`Insertion depth: the crimp row (${matched}) says ${crimp.insertionDepth}, the fitting ${depth}; the crimp row counts`]
      : [],
  };
}
