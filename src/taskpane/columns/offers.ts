import { ROLES, type Role } from './roles';
import type { Columns } from './proposeColumns';

/** What the workbook's catalogue is known to be. */
export interface CatalogueState {
  /** The workbook has a name `Catalogue`. */
  readonly present: boolean;
  /** Unit of its lengths, as its handle says. */
  readonly unit?: 'mm' | 'in' | undefined;
}

/** Writes the reference to a role's cells: of one row, or of all rows. */
export type Reference = (role: Role) => string;

/** A column that can be added. */
export interface Offer {
  readonly id: string;
  readonly heading: string;
  /** Holds crimp values, so that the cautions are shown. */
  readonly crimp: boolean;
  /** Why it cannot be added, in words. */
  readonly reason?: string | undefined;
  /** Which data it takes, in words. */
  readonly takes: string;
  /** Function call without `=`, and which column of its answer is wanted (several-column functions). */
  readonly call: (at: Reference) => string;
  readonly part?: number;
}

interface Recipe extends Omit<Offer, 'reason' | 'takes'> {
  readonly needs: readonly Role[];
  readonly catalogue: boolean;
  /** The length goes to the catalogue, so that its unit must be the catalogue's. */
  readonly unitMatters?: boolean;
}

const call = (id: string, parts: readonly string[]) => `HOSE.${id}(${parts.join(',')})`;

function fromCatalogue(): Recipe[] {
  const roles: Role[] = ['hose', 'fittingA', 'fittingB', 'overall'];
  const assembly = (at: Reference) => call('ASSEMBLY', ['Catalogue', ...roles.map(at)]);
  const common = { crimp: false, catalogue: true, unitMatters: true } as const;
  return [
    { id: 'pressure', heading: 'Working pressure', ...common, needs: roles, call: assembly, part: 2 },
    { id: 'assembly', heading: 'Assembly check', ...common, needs: roles, call: assembly, part: 4 },
    {
      id: 'cost',
      heading: 'Cost each',
      ...common,
      needs: [...roles, 'quantity'],
      call: at => call('UNITCOST', ['Catalogue', ...roles.map(at), at('quantity')]),
      part: 4,
    },
  ];
}

function cutLength(columns: Columns): Recipe {
  const common = { id: 'cutLength', heading: 'Cut length', crimp: false } as const;
  const typed = columns.cutOffA || columns.cutOffB;
  if (!typed && (columns.fittingA || columns.fittingB)) {
    const needs: Role[] = ['hose', 'fittingA', 'fittingB', 'overall'];
    if (columns.allowance) return { ...common, catalogue: true, unitMatters: true, needs, call: at => withAllowance(needs, at) };
    return {
      ...common,
      catalogue: true,
      unitMatters: true,
      needs,
      call: at => call('ASSEMBLY', ['Catalogue', ...needs.map(at)]),
      part: 1,
    };
  }
  const needs: Role[] = ['overall', 'cutOffA', 'cutOffB'];
  const all: Role[] = columns.allowance ? [...needs, 'allowance'] : needs;
  return { ...common, catalogue: false, needs, call: at => call('CUTLENGTH', all.map(at)) };
}

/** The allowance is the row's own, which ASSEMBLY does not take: the cut-offs are looked up instead. */
function withAllowance(needs: readonly Role[], at: Reference): string {
  const cutOff = (role: Role) => call('FITTINGDATA', ['Catalogue', at(role), '"cut-off"']);
  return call('CUTLENGTH', [at(needs[3]!), cutOff('fittingA'), cutOff('fittingB'), at('allowance')]);
}

function setUps(columns: Columns): Recipe[] {
  const ends: Role[] = columns.fittingB ? ['fittingA', 'fittingB'] : ['fittingA'];
  const parts: [string, string, number][] = [
    ['die', 'Die', 1],
    ['dial', 'Dial', 2],
    ['diameter', 'Crimp diameter', 3],
    ['insertion', 'Insertion depth', 5],
  ];
  return parts.flatMap(([id, heading, part]) =>
    ends.map(end => ({
      id: `${id}${end.slice(-1)}`,
      heading: columns.fittingB ? `${heading} ${end.slice(-1)}` : heading,
      crimp: true,
      catalogue: true,
      needs: ['hose', end] as Role[],
      call: (at: Reference) =>
        call('CRIMPSETUP', ['Catalogue', at('hose'), at(end), ...(columns.machine ? [at('machine')] : [])]),
      part,
    })),
  );
}

const JUDGED: Role[] = ['readings', 'target', 'tolerance'];

function judgements(): Recipe[] {
  return [
    {
      id: 'check',
      heading: 'Check',
      crimp: true,
      catalogue: false,
      needs: JUDGED,
      call: at => call('CRIMPCHECK', JUDGED.map(at)),
    },
    {
      id: 'deviation',
      heading: 'Deviation',
      crimp: true,
      catalogue: false,
      needs: JUDGED,
      call: at => call('CRIMPDETAIL', JUDGED.map(at)),
      part: 2,
    },
    {
      id: 'nextDial',
      heading: 'Next dial',
      crimp: true,
      catalogue: false,
      needs: ['dial', ...JUDGED, 'step'],
      call: at =>
        call(
          'NEXTDIAL',
          ['dial', ...JUDGED, 'step'].map(role => at(role as Role)),
        ),
    },
  ];
}

function price(costs: Recipe): Recipe {
  const cost = (at: Reference) => costs.call(at);
  return {
    ...costs,
    id: 'price',
    heading: 'Price each',
    needs: [...costs.needs, 'margin'],
    call: at => call('SELLPRICE', [`INDEX(${cost(at)},${at('margin').includes(':') ? 0 : 1},4)`, at('margin')]),
    part: 0,
  };
}

function reasonOf(recipe: Recipe, columns: Columns, catalogue: CatalogueState, unit: 'mm' | 'in' | undefined) {
  const missing = recipe.needs.filter(role => !columns[role]).map(role => ROLES[role].label);
  if (missing.length > 0) return `Needs a column for: ${missing.join(', ')}.`;
  if (recipe.catalogue && !catalogue.present)
    return 'Needs the parts data: no cell of this workbook is named Catalogue and holds =HOSE.CATALOGUE(…).';
  if (recipe.unitMatters && unit && catalogue.unit && unit !== catalogue.unit)
    return `The overall lengths are in ${unit}, the catalogue is in ${catalogue.unit}: they must be the same.`;
  return undefined;
}

/** The columns that can be added, each with what it takes, and with the reason in words where it cannot be added. */
export function offersFor(columns: Columns, catalogue: CatalogueState, unit?: 'mm' | 'in'): Offer[] {
  const [pressure, assembly, cost] = fromCatalogue() as [Recipe, Recipe, Recipe];
  const recipes = [cutLength(columns), ...setUps(columns), pressure, assembly, ...judgements(), cost, price(cost)];
  return recipes.map(recipe => ({
    ...recipe,
    takes: [...(recipe.catalogue ? ['Catalogue'] : []), ...recipe.needs.map(role => ROLES[role].label)].join(', '),
    reason: reasonOf(recipe, columns, catalogue, unit),
  }));
}
