import type { EndLetter } from './columnRoles';
import { judgedBy, judgedEnds } from './judgedBy';
import { call, type FormulaPlace, type OfferContext, type Recipe } from './offer';

/** Judgements of the measured crimps of an end. */
function judgementsOf(context: OfferContext, end: EndLetter, letter: string): readonly Recipe[] {
  const by = judgedBy(context, end);
  const { needs, catalogue, alsoTakes, restsOn, hindrance, spreadHindrance } = by;
  const common = { crimp: true, catalogue, needs, alsoTakes, restsOn, ...(catalogue && { unitMatters: 'diameter' as const }) };
  const unit = context.units.diameter ?? (catalogue ? context.catalogue.diameterUnit : undefined);
  const measured = (place: FormulaPlace) => [by.readings(place), by.target(place), by.tolerance(place)];
  const headed = (heading: string) => (letter === '' ? heading : `${heading} ${letter}`);
  const detail = (place: FormulaPlace) => call('CRIMPDETAIL', [...measured(place), by.spread(place)]);
  return [
    {
      ...common,
      id: `check${letter}`,
      heading: headed('Verdict'),
      hindrance: hindrance ?? spreadHindrance,
      call: place => call('CRIMPCHECK', [...measured(place), '', by.spread(place)]),
      alsoFrom: { call: detail, part: 4 },
      good: 'IN SPEC',
    },
    {
      ...common,
      id: `deviation${letter}`,
      heading: headed('Deviation'),
      hindrance,
      // Without a verdict beside it the spread does not matter.
      call: place => (spreadHindrance ? call('CRIMPDETAIL', measured(place)) : detail(place)),
      part: 2,
      unit,
      // A mean of readings: one digit more than a caliper shows.
      format: unit === 'in' ? '0.0000' : '0.000',
    },
  ];
}

/** Judgements of measured crimps: of each end where both ends lie in a row. */
export const judgementRecipes = (context: OfferContext): readonly Recipe[] =>
  judgedEnds(context).flatMap(([end, letter]) => judgementsOf(context, end, letter));
