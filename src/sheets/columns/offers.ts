import { assemblyRecipes, cutLengthRecipe } from './assemblyRecipes';
import { catalogueHindrance, type CatalogueState } from '../catalogue/catalogueState';
import { judgementRecipes, setUpRecipes } from './crimpRecipes';
import { nextDialRecipe } from './nextDialRecipe';
import type { Offer, OfferContext, OfferOptions, Recipe, TableUnits } from './offer';
import { priceRecipes } from './priceRecipes';
import type { Columns } from '../table/proposeColumns';
import { ROLES } from '../table/roles';

function unitReason({ unitMatters }: Recipe, { catalogue, units }: OfferContext): string | undefined {
  const [mine, theirs, what] =
    unitMatters === 'length'
      ? [units.overall, catalogue.unit, 'overall lengths are']
      : unitMatters === 'diameter'
        ? [units.diameter, catalogue.diameterUnit, 'readings and targets are']
        : [];
  if (!mine || !theirs || mine === theirs) return undefined;
  return `The ${what} in ${mine}, the catalogue is in ${theirs}: they must be the same.`;
}

function reasonOf(recipe: Recipe, context: OfferContext): string | undefined {
  const { columns, catalogue } = context;
  const hindrance = recipe.catalogue ? catalogueHindrance(catalogue) : undefined;
  if (hindrance) return hindrance;
  const missing = recipe.needs.filter(role => !columns[role]).map(role => ROLES[role].label);
  if (missing.length > 0) return `Needs a column for: ${missing.join(', ')}.`;
  return unitReason(recipe, context) ?? recipe.hindrance;
}

/** The columns that can be added, each with what it takes, and with the reason in words where it cannot be added. */
export function offersFor(
  columns: Columns,
  catalogue: CatalogueState,
  units: TableUnits = {},
  options: OfferOptions = {},
): Offer[] {
  const context = { columns, catalogue, options, units };
  const recipes: readonly Recipe[] = [
    cutLengthRecipe(context),
    ...setUpRecipes(context),
    ...assemblyRecipes(context),
    ...judgementRecipes(context),
    nextDialRecipe(context),
    ...priceRecipes(context),
  ];
  return recipes.map(recipe => ({
    ...recipe,
    takes: [
      ...(recipe.catalogue ? ['Catalogue'] : []),
      ...recipe.needs.map(role => ROLES[role].label),
      ...(recipe.alsoTakes ?? []),
    ].join(', '),
    reason: reasonOf(recipe, context),
  }));
}
