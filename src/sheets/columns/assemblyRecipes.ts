import { measureUnit } from '../../core/units/measureUnit';
import { readRatingFormula } from '../catalogue/ratingDecimals';
import { turnedCell } from '../table/turnedBy';
import { roleLabel } from './columnRoles';
import { cutLengthFormat, TWO_PLACES } from '../table/numberFormats';
import { call, partOf, type OfferContext, type FormulaPlace, type Recipe } from './offer';
import type { Role } from './columnRoles';

/** Which column of ASSEMBLY's answer is the rating. */
const PRESSURE = 2;

/** What ASSEMBLY takes after the catalogue. */
const PARTS: readonly Role[] = ['hose', 'fittingA', 'fittingB', 'overall'];

const assembly = ({ at, catalogue }: FormulaPlace) => call('ASSEMBLY', [catalogue, ...PARTS.map(at)]);
const fromCatalogue = { crimp: false, catalogue: true, unitMatters: 'length', needs: PARTS, call: assembly } as const;

/** The allowance is the row's own, which ASSEMBLY does not take: the cut-offs are looked up instead. */
function withAllowance({ at, catalogue }: FormulaPlace): string {
  const cutOff = (role: Role) => call('FITTINGDATA', [catalogue, at(role), '"cut-off"']);
  return call('CUTLENGTH', [at('overall'), cutOff('fittingA'), cutOff('fittingB'), at('allowance')]);
}

/** Cut length: by typed cut-offs where the table has them, else by those of the catalogue. */
export function cutLengthRecipe(context: OfferContext): Recipe {
  const { columns, catalogue, units, options } = context;
  const inUnit = (unit: string | undefined) => ({ unit, format: cutLengthFormat(unit, options.benchStep) });
  const common = { id: 'cutLength', heading: 'Cut length', crimp: false, ...inUnit(units.overall) } as const;
  const typed = columns.cutOffA || columns.cutOffB;
  if (!typed && (columns.fittingA || columns.fittingB)) {
    const looked = { ...fromCatalogue, ...common, ...inUnit(catalogue.unit ?? units.overall) };
    return columns.allowance ? { ...looked, call: withAllowance } : { ...looked, part: 1, ...inUseToo(context, 1) };
  }
  const needs: Role[] = ['overall', 'cutOffA', 'cutOffB'];
  const all: Role[] = columns.allowance ? [...needs, 'allowance'] : needs;
  return { ...common, catalogue: false, needs, call: ({ at }) => call('CUTLENGTH', all.map(at)) };
}

/** The row's temperature in the catalogue's unit; a blank stays blank: that row is not derated. */
function temperatureOf({ units, catalogue }: OfferContext, { at }: FormulaPlace): string {
  const cell = at('temperature');
  const [from, to] = [units.temperature, catalogue.temperatureUnit].map(symbol => measureUnit('temperature', symbol ?? ''));
  if (!from || !to || from.symbol === to.symbol) return cell;
  // The try-out sheet’s engine finds 0 equal to "": LEN does not.
  return `IF(LEN(${cell})=0,"",${turnedCell(cell, from, to)})`;
}

/** Why temperatures of the table cannot go to the catalogue; undefined where they can. */
function temperatureHindrance({ columns, units, catalogue }: OfferContext): string | undefined {
  if (!columns.temperature) return undefined;
  if (!units.temperature && units.asksTemperature) return 'Say first which unit the temperatures are in.';
  const isKnown = catalogue.temperatureUnit !== undefined || catalogue.pressureUnit !== undefined;
  return isKnown ? undefined : 'The catalogue’s unit of temperatures cannot be read: its formula cannot be followed here.';
}

/** At the row's temperature and with its fluid, where the table has such columns: the rating is derated, the limits are checked. */
function inUse(context: OfferContext): Pick<Recipe, 'call' | 'alsoTakes' | 'hindrance'> {
  const { columns } = context;
  const hindrance = temperatureHindrance(context);
  return {
    call: place =>
      call('ASSEMBLY', [
        place.catalogue,
        ...PARTS.map(place.at),
        columns.temperature ? temperatureOf(context, place) : '',
        columns.fluid ? place.at('fluid') : '',
      ]),
    alsoTakes: (['temperature', 'fluid'] as const).filter(role => columns[role]).map(roleLabel),
    ...(hindrance && { hindrance }),
  };
}

/** Cut length and mass are the same at any temperature, so that the call of the columns that depend on it gives them, too. */
function inUseToo(context: OfferContext, part: number): Pick<Recipe, 'alsoFrom'> {
  const { call: inUseCall, hindrance } = inUse(context);
  return hindrance ? {} : { alsoFrom: { call: inUseCall, part } };
}

/** The rating; where it may have more decimals than anybody reads, rounded down by a formula of its own. */
function pressureRecipe({ catalogue }: OfferContext, use: ReturnType<typeof inUse>): Recipe {
  const { pressureUnit, ratingDecimals } = catalogue;
  const common = { id: 'pressure', heading: 'Working pressure', ...fromCatalogue, ...use, unit: pressureUnit } as const;
  if (ratingDecimals === undefined) return { ...common, part: PRESSURE };
  return { ...common, call: place => readRatingFormula(partOf(use.call(place), place, PRESSURE), ratingDecimals) };
}

/** What else the catalogue says of the whole assembly. */
export function assemblyRecipes(context: OfferContext): readonly Recipe[] {
  const { catalogue } = context;
  const use = inUse(context);
  return [
    pressureRecipe(context, use),
    {
      id: 'mass',
      heading: 'Mass',
      ...fromCatalogue,
      unit: catalogue.massUnit,
      format: TWO_PLACES,
      part: 3,
      ...inUseToo(context, 3),
    },
    { id: 'assembly', heading: 'Assembly check', ...fromCatalogue, ...use, part: 4, good: 'OK', inSentences: true },
  ];
}
