import { TWO_PLACES } from '../table/numberFormats';
import { call, partOf, type OfferContext, type FormulaPlace, type Recipe } from './offer';
import { roleLabel, type Role } from './columnRoles';

const PARTS: readonly Role[] = ['hose', 'fittingA', 'fittingB', 'overall', 'quantity'];
const TOTAL = 4;

const common = { crimp: false, catalogue: true, unitMatters: 'length', format: TWO_PLACES, isMoney: true } as const;

/** Cost of one, and the price that leaves a margin on it: the table's own margin, or the one that is asked for. */
export function priceRecipes({ columns, options }: OfferContext): readonly Recipe[] {
  const { margin, roundTo = '', minimum = '' } = options;
  const unitCost = ({ at, catalogue }: FormulaPlace) =>
    call('UNITCOST', [catalogue, ...PARTS.map(at), columns.guard ? at('guard') : '']);
  const guard = columns.guard ? [roleLabel('guard')] : [];
  const price = (place: FormulaPlace) => {
    const share = columns.margin ? place.at('margin') : (margin ?? '');
    return call('SELLPRICE', [place.added?.('cost') ?? partOf(unitCost(place), place, TOTAL), share, roundTo, minimum]);
  };
  return [
    { ...common, id: 'cost', heading: 'Cost each', needs: PARTS, alsoTakes: guard, call: unitCost, part: TOTAL },
    {
      ...common,
      id: 'price',
      heading: 'Price each',
      needs: columns.margin ? [...PARTS, 'margin'] : PARTS,
      alsoTakes: columns.margin ? guard : [...guard, 'Margin'],
      hindrance:
        columns.margin || margin !== undefined
          ? undefined
          : 'Needs a margin: add a column Margin to the table, or enter one under “Machine and price”.',
      call: price,
    },
  ];
}
