import { call, type OfferContext, type Place, type Recipe } from './offer';
import type { Role } from './columnRoles';

/** What ASSEMBLY takes after the catalogue. */
const PARTS: readonly Role[] = ['hose', 'fittingA', 'fittingB', 'overall'];

const assembly = ({ at, catalogue }: Place) => call('ASSEMBLY', [catalogue, ...PARTS.map(at)]);
const fromCatalogue = { crimp: false, catalogue: true, unitMatters: 'length', needs: PARTS, call: assembly } as const;

/** The allowance is the row's own, which ASSEMBLY does not take: the cut-offs are looked up instead. */
function withAllowance({ at, catalogue }: Place): string {
  const cutOff = (role: Role) => call('FITTINGDATA', [catalogue, at(role), '"cut-off"']);
  return call('CUTLENGTH', [at('overall'), cutOff('fittingA'), cutOff('fittingB'), at('allowance')]);
}

/** Cut length: by typed cut-offs where the table has them, else by those of the catalogue. */
export function cutLengthRecipe({ columns, catalogue, units }: OfferContext): Recipe {
  const common = { id: 'cutLength', heading: 'Cut length', crimp: false, unit: units.overall } as const;
  const typed = columns.cutOffA || columns.cutOffB;
  if (!typed && (columns.fittingA || columns.fittingB)) {
    const looked = { ...fromCatalogue, ...common, unit: catalogue.unit ?? units.overall };
    return columns.allowance ? { ...looked, call: withAllowance } : { ...looked, part: 1 };
  }
  const needs: Role[] = ['overall', 'cutOffA', 'cutOffB'];
  const all: Role[] = columns.allowance ? [...needs, 'allowance'] : needs;
  return { ...common, catalogue: false, needs, call: ({ at }) => call('CUTLENGTH', all.map(at)) };
}

/** What else the catalogue says of the whole assembly. */
export const assemblyRecipes = ({ catalogue }: OfferContext): readonly Recipe[] => [
  { id: 'pressure', heading: 'Working pressure', ...fromCatalogue, unit: catalogue.pressureUnit, part: 2 },
  { id: 'mass', heading: 'Mass', ...fromCatalogue, unit: catalogue.massUnit, part: 3 },
  { id: 'assembly', heading: 'Assembly check', ...fromCatalogue, part: 4 },
];
