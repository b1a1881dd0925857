import { assemblyRecipes, cutLengthRecipe } from './assemblyRecipes';
import { columnLetters } from '../../workbook/a1';
import { catalogueHindrance } from '../catalogue/catalogueState';
import { judgementRecipes } from './crimpRecipes';
import { setUpRecipes } from './setUp';
import { nextDialRecipes } from './nextDialRecipe';
import type { Offer, OfferContext, OfferOptions, FormulaPlace, Recipe, TableUnits } from './offer';
import { priceRecipes } from './priceRecipes';
import { measureUnit } from '../../core/units/measureUnit';
import { turnedBy } from '../table/turnedBy';
import { roleLabel, type Role } from './columnRoles';
import type { TableView } from './columnsView';
import { ownColumnNamed } from './ownColumns';

/** `in in` reads badly. */
const said = (unit: string): string => (unit === 'in' ? 'inches' : unit);

function unitReason({ unitMatters }: Recipe, { catalogue, units }: OfferContext): string | undefined {
  const [mine, theirs, what] =
    unitMatters === 'length'
      ? [units.overall, catalogue.unit, 'overall lengths are']
      : unitMatters === 'diameter'
        ? [units.diameter, catalogue.diameterUnit, 'readings and targets are']
        : [];
  if (unitMatters && !mine && units.asks) return `Say first which unit the ${what} in.`;
  if (!mine || !theirs || mine === theirs) return undefined;
  if (unitMatters === 'length') {
    if (!units.isText) return undefined;
    return `The ${what} in ${said(mine)} and typed as text, the catalogue is in ${said(theirs)}: type them as numbers, or in ${said(theirs)}.`;
  }
  return `The ${what} in ${said(mine)}, the catalogue is in ${said(theirs)}: they must be the same.`;
}

function reasonOf(recipe: Recipe, context: OfferContext): string | undefined {
  const { columns, catalogue } = context;
  const hindrance = recipe.catalogue ? catalogueHindrance(catalogue) : undefined;
  if (hindrance) return hindrance;
  const missing = recipe.needs.filter(role => !columns[role]).map(role => roleLabel(role));
  if (missing.length > 0) return `Needs a column for: ${missing.join(', ')}.`;
  return unitReason(recipe, context) ?? recipe.hindrance;
}

const LENGTHS: ReadonlySet<Role> = new Set<Role>(['overall', 'allowance']);

/** Lengths go to the catalogue in its unit: the formula turns those of a table in another one, exactly. */
function inUnitOfCatalogue(recipe: Recipe, { units, catalogue }: OfferContext): Recipe {
  const [from, to] = [units.overall, catalogue.unit].map(symbol => measureUnit('length', symbol ?? ''));
  const turn = from && to && recipe.catalogue && recipe.unitMatters === 'length' ? turnedBy(from, to) : '';
  if (turn === '') return recipe;
  const turned = (place: FormulaPlace): FormulaPlace => ({
    ...place,
    at: role => `${place.at(role)}${LENGTHS.has(role) ? turn : ''}`,
  });
  const { alsoFrom } = recipe;
  return {
    ...recipe,
    call: place => recipe.call(turned(place)),
    ...(alsoFrom && { alsoFrom: { ...alsoFrom, call: place => alsoFrom.call(turned(place)) } }),
  };
}

/** A table that our functions fill a column of already gets no second one. */
function secondReason(recipe: Recipe, table: OfferTable): string | undefined {
  const own =
    table.cells && table.table ? ownColumnNamed({ ...table, cells: table.cells, table: table.table }, recipe.heading) : undefined;
  return own && `The table has it: column ${columnLetters(own.column)}.`;
}

/** What offers are made for: a table, or its columns alone. */
export type OfferTable = Pick<TableView, 'columns' | 'catalogue'> &
  Partial<Pick<TableView, 'cells' | 'table' | 'crimps'>> & { readonly units?: TableUnits };

/** The columns that can be added, each with what it takes, and with the reason in words where it cannot be added. */
export function offersFor(table: OfferTable, options: OfferOptions = {}): Offer[] {
  const { columns, catalogue, crimps, units = {} } = table;
  const context = { columns, catalogue, crimps, options, units };
  const recipes: readonly Recipe[] = [
    cutLengthRecipe(context),
    ...setUpRecipes(context),
    ...assemblyRecipes(context),
    ...judgementRecipes(context),
    ...nextDialRecipes(context),
    ...priceRecipes(context),
  ];
  return recipes.map(recipe => {
    const present = secondReason(recipe, table);
    return {
      ...inUnitOfCatalogue(recipe, context),
      takes: [
        ...(recipe.catalogue ? ['Catalogue'] : []),
        ...recipe.needs.map(role => roleLabel(role)),
        ...(recipe.alsoTakes ?? []),
      ].join(', '),
      reason: present ?? reasonOf(recipe, context),
      isPresent: present !== undefined,
    };
  });
}
