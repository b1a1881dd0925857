import type { Catalogue } from './catalogue';
import { crimpFor } from './crimpFor';
import { machineDial } from './machineDial';
import { partKey } from './partName';
import type { Crimp } from './tables/crimpsTable';

/** What to set a crimper to. Diameters are in the catalogue's unit of crimp diameters, the depth in that of lengths. */
export interface CrimpSetup {
  readonly die: string;
  readonly dial: number;
  readonly crimpDiameter: number;
  readonly tolerance: number;
  readonly insertionDepth: number | undefined;
  /** Whose dial it is: the catalogue's, or the machine's own recorded one. */
  readonly source: 'CATALOGUE' | 'MACHINE';
  /** The part or pattern of the row that counted. */
  readonly matched: string;
  readonly crimp: Crimp;
  /** What the user should know besides, e.g. insertion depths that differ. */
  readonly notes: readonly string[];
}

/**
 * Set-up for a hose and a fitting. A machine's own recorded dial for the row's die wins over the catalogue's; the crimp row's insertion
 * depth wins over the fitting's.
 * @throws TradeError `notApproved` "no crimp data for …: do not assemble"; `notFound` for an unknown machine
 */
export function crimpSetup(catalogue: Catalogue, hose: string, fitting: string, machine?: string): CrimpSetup {
  const { crimp, matched } = crimpFor(catalogue, hose, fitting);
  const own = machine === undefined ? undefined : machineDial(catalogue, machine, crimp.die, hose, fitting);
  const depth = catalogue.index.fittings.get(partKey(fitting))?.row?.insertionDepth;
  const differs = crimp.insertionDepth !== undefined && depth !== undefined && crimp.insertionDepth !== depth;
  return {
    die: crimp.die,
    dial: own?.dial ?? crimp.dial,
    crimpDiameter: crimp.crimpDiameter,
    tolerance: crimp.tolerance,
    insertionDepth: crimp.insertionDepth ?? depth,
    source: own?.dial === undefined ? 'CATALOGUE' : 'MACHINE',
    matched,
    crimp,
    notes: differs
      ? [`Insertion depth: the crimp row (${matched}) says ${crimp.insertionDepth}, the fitting ${depth}; the crimp row counts`]
      : [],
  };
}
