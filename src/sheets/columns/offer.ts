import type { Length } from '../../core/units/lengthUnit';
import type { CatalogueState } from '../catalogue/catalogueState';
import type { Role } from './columnRoles';
import type { CrimpFacts } from './crimpFacts';
import type { Columns } from './tableColumnsOf';

/** Where a formula stands: the cells of its row, or, where one formula serves all rows, of all of them. */
export interface FormulaPlace {
  /** Reference to a role's cells. */
  readonly at: (role: Role) => string;
  /** How a formula names the catalogue's cell. */
  readonly catalogue: string;
  /** Row of a several-column answer that is wanted: 1, or 0 for all. */
  readonly index: 0 | 1;
  /** Its rows, zero-based; undefined where calls are only compared. */
  readonly rows?: { readonly first: number; readonly last: number } | undefined;
  /** Cells of a column that is written at the same time; undefined where it is not. */
  readonly added?: ((id: string) => string | undefined) | undefined;
}

/** A column that can be added. */
export interface Offer {
  readonly id: string;
  readonly heading: string;
  /** Holds crimp values, so that the cautions are shown. */
  readonly crimp: boolean;
  /** Why it cannot be added, in words. */
  readonly reason?: string | undefined;
  /** The table has this column already. */
  readonly isPresent?: boolean | undefined;
  /** Which data it takes, in words. */
  readonly takes: string;
  /** Function call without `=`. */
  readonly call: (place: FormulaPlace) => string;
  /** Which column of the call's answer is wanted; undefined where it has one only. */
  readonly part?: number;
  /** Another call that gives the same column, taken where it is called for others anyway. */
  readonly alsoFrom?: { readonly call: (place: FormulaPlace) => string; readonly part: number } | undefined;
  /** Columns that it is worked out from where they are written beside it, and otherwise looks up by itself. */
  readonly restsOn?: readonly string[] | undefined;
  /** Unit of the values, for the heading. */
  readonly unit?: string | undefined;
  /** The answer that needs no look, where the column answers in words. */
  readonly good?: string | undefined;
  /** It answers in sentences: the column is as wide as columns get. */
  readonly inSentences?: boolean;
  /** Number format of the values, where General would show more digits than anyone reads. */
  readonly format?: string | undefined;
  /** Its values are money: written as the workbook writes prices. */
  readonly isMoney?: boolean;
}

/** What is asked for besides columns. */
export interface OfferOptions {
  /** Name of the machine; "" or undefined: the one that the table's own column names. */
  readonly machine?: string | undefined;
  /** Margin as it stands in a formula: `0.4`; undefined where none is given. */
  readonly margin?: string | undefined;
  readonly roundTo?: string | undefined;
  readonly minimum?: string | undefined;
  /** Step of the bench, to which cut lengths are shown; what is usual where left out. */
  readonly benchStep?: Length | undefined;
  /** One formula a column is wanted. */
  readonly spill?: boolean | undefined;
}

/** Units that the headings of a table state. */
export interface TableUnits {
  readonly overall?: string | undefined;
  /** Of readings and target. */
  readonly diameter?: string | undefined;
  readonly temperature?: string | undefined;
  /** Overall lengths are typed as text, so that a formula cannot turn them into another unit. */
  readonly isText?: boolean;
  /** Somebody has to say a unit of lengths first. */
  readonly asks?: boolean;
  /** Somebody has to say the unit of temperatures first. */
  readonly asksTemperature?: boolean;
}

/** What offers are made from. */
export interface OfferContext {
  readonly columns: Columns;
  readonly crimps?: CrimpFacts | undefined;
  readonly catalogue: CatalogueState;
  readonly options: OfferOptions;
  readonly units: TableUnits;
}

/** How a column is made, and what it needs. */
export interface Recipe extends Omit<Offer, 'reason' | 'takes' | 'isPresent'> {
  readonly needs: readonly Role[];
  /** Looks up in the catalogue. */
  readonly catalogue: boolean;
  /** Which numbers of the table go to the catalogue or are compared with it, so that their unit must be its own. */
  readonly unitMatters?: 'length' | 'diameter';
  /** What else it takes, in words. */
  readonly alsoTakes?: readonly string[];
  /** Why it cannot be made though its columns are there. */
  readonly hindrance?: string | undefined;
}

/** A call of one of our functions; arguments left out at the end are not written. */
export function call(id: string, parts: readonly string[]): string {
  const given = parts.length - [...parts].reverse().findIndex(part => part !== '');
  return `HOSE.${id}(${parts.slice(0, given).join(',')})`;
}

/** One column of a several-column answer. */
export const partOf = (answer: string, { index }: FormulaPlace, part: number) => `INDEX(${answer},${index},${part})`;
