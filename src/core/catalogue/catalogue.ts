import type { CatalogueUnits } from './catalogueUnits';
import type { Problem } from './problem';
import type { ReadRow } from './readRows';
import type { TableName } from './tables/catalogueTables';
import type { Crimp } from './tables/crimpsTable';
import type { Derating } from './tables/deratingTable';
import type { Die } from './tables/diesTable';
import type { FluidRow } from './tables/fluidsTable';
import type { Fitting } from './tables/fittingsTable';
import type { Guard } from './tables/guardsTable';
import type { Hose } from './tables/hosesTable';
import type { CatalogueMachine } from './tables/machinesTable';
import type { Rate } from './tables/ratesTable';

/** What a look-up finds under a name: the row, or why it was left out. */
export type Entry<T> =
  { readonly row: T; readonly problem?: undefined } | { readonly row?: undefined; readonly problem: Problem };

/** A crimp row, or one that was left out, by the fitting or pattern it names. */
export interface CrimpEntry {
  /** As it stands in the table: `Alder DN 25 straight`, `Alder DN 25*`. */
  readonly fitting: string;
  readonly entry: Entry<Crimp>;
}

/** Crimp rows of one hose. */
export interface HoseCrimps {
  readonly exact: ReadonlyMap<string, CrimpEntry>;
  /** By length of what stands before the `*`, longest first. */
  readonly patterns: readonly (CrimpEntry & { readonly start: string })[];
}

/** A recorded setting of a machine or its description, or such a row that was left out. */
export interface MachineEntry {
  /** Day number, the time of day as a fraction; undefined where none is given or it could not be read. */
  readonly date: number | undefined;
  /** Key of the die; "" where none is given or it could not be read. */
  readonly die: string;
  readonly entry: Entry<CatalogueMachine>;
}

/** A row of the table Fluids, or one that was left out, by what it names. */
export interface FluidEntry {
  /** Keys of the fluid's own name and of what else it is called; the own name first. */
  readonly names: readonly string[];
  /** Key of the hose or pattern; "" = all hoses. */
  readonly hose: string;
  readonly entry: Entry<FluidRow>;
}

/** A guard, or a row of Guards that was left out. */
export interface GuardEntry {
  /** Key of its size; "" where none is given. */
  readonly size: string;
  readonly entry: Entry<Guard>;
}

/** The parts data of a workshop, read and checked. Numbers are in `units`. */
export interface Catalogue {
  /** Short text made from the content: equal data, equal handle. */
  readonly handle: string;
  /** Whole hash of the content; tells two catalogues apart whose handles happen to be equal. */
  readonly digest: string;
  readonly units: CatalogueUnits;
  readonly hoses: readonly Hose[];
  readonly fittings: readonly Fitting[];
  readonly crimps: readonly Crimp[];
  readonly machines: readonly CatalogueMachine[];
  readonly rates: readonly Rate[];
  readonly dies: readonly Die[];
  readonly guards: readonly Guard[];
  readonly derating: readonly Derating[];
  readonly fluids: readonly FluidRow[];
  /** All problems, in table and row order. */
  readonly problems: readonly Problem[];
  readonly leftOutRows: number;
  /** All rows as they were read, those that are left out among them; what may be noticed in them tells catalogueNotes. */
  readonly rows: Readonly<Record<TableName, readonly ReadRow[]>>;
  readonly index: CatalogueIndex;
}

/** Ways into a catalogue by key (see partKey). */
export interface CatalogueIndex {
  readonly hoses: ReadonlyMap<string, Entry<Hose>>;
  readonly fittings: ReadonlyMap<string, Entry<Fitting>>;
  readonly crimps: ReadonlyMap<string, HoseCrimps>;
  /** Names of machines that some row names, as they stand there. */
  readonly machines: ReadonlyMap<string, string>;
  /** Recorded settings by machine, hose and fitting (or pattern of fittings); newest first, of one time the lower row first. */
  readonly settings: ReadonlyMap<string, readonly MachineEntry[]>;
  /** Keys of the patterns that some recorded setting names in place of a fitting, longest first. */
  readonly settingPatterns: readonly string[];
  /** Describing rows by machine; newest first. */
  readonly descriptions: ReadonlyMap<string, readonly MachineEntry[]>;
  readonly rates: ReadonlyMap<string, Entry<Rate>>;
  /** By hose, coldest first. A left-out row makes the hose's derating unknown. */
  readonly derating: ReadonlyMap<string, readonly Entry<Derating>[]>;
  readonly fluids: readonly FluidEntry[];
  /** Guards by name: one a size. */
  readonly guards: ReadonlyMap<string, readonly GuardEntry[]>;
}
