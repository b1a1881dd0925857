import { inQuotes } from '../../workbook/inQuotes';
import { caliperFormat, depthFormat } from '../table/numberFormats';
import { call, partOf, type OfferContext, type FormulaPlace, type Recipe } from './offer';
import type { EndLetter, Role } from './columnRoles';

/** Which column of CRIMPSETUP's answer is what. */
const SET_UP = { die: 1, dial: 2, diameter: 3, tolerance: 4, insertion: 5 } as const;

export type SetUp = keyof typeof SET_UP;

const HEADINGS: readonly (readonly [id: SetUp, heading: string])[] = [
  ['die', 'Die'],
  ['dial', 'Dial'],
  ['diameter', 'Crimp diameter'],
  ['tolerance', 'Tolerance'],
  ['insertion', 'Insertion depth'],
];

/** The machine of the table's own column, else the one that was chosen, as an argument; "" where none is. */
function machineArgument({ columns, options }: OfferContext, { at }: FormulaPlace): string {
  if (options.machine) return inQuotes(options.machine);
  return columns.crimper ? at('crimper') : '';
}

/** The set-up of one end, as a call. */
function setUpCall(context: OfferContext, end: Role, place: FormulaPlace): string {
  return call('CRIMPSETUP', [place.catalogue, place.at('hose'), place.at(end), machineArgument(context, place)]);
}

/** A value for an end: of the column that is written at the same time, else looked up. */
export function setUpOf(context: OfferContext, end: EndLetter, field: SetUp, place: FormulaPlace): string {
  return place.added?.(`${field}${end}`) ?? partOf(setUpCall(context, `fitting${end}`, place), place, SET_UP[field]);
}

function unitOf(id: SetUp, { catalogue }: OfferContext): string | undefined {
  if (id === 'diameter' || id === 'tolerance') return catalogue.diameterUnit;
  return id === 'insertion' ? catalogue.unit : undefined;
}

/** Diameters as a caliper shows them, depths as a rule does; dies and dials as they are. */
function formatOf(id: SetUp, unit: string | undefined): string | undefined {
  if (id === 'diameter' || id === 'tolerance') return caliperFormat(unit);
  return id === 'insertion' ? depthFormat(unit) : undefined;
}

/** What to set the crimper to, a column a value and end. */
export function setUpRecipes(context: OfferContext): readonly Recipe[] {
  const { fittingB } = context.columns;
  const ends: Role[] = fittingB ? ['fittingA', 'fittingB'] : ['fittingA'];
  return HEADINGS.flatMap(([id, heading]) =>
    ends.map(end => ({
      id: `${id}${end.slice(-1)}`,
      heading: fittingB ? `${heading} ${end.slice(-1)}` : heading,
      crimp: true,
      catalogue: true,
      needs: ['hose', end] as Role[],
      call: (place: FormulaPlace) => setUpCall(context, end, place),
      part: SET_UP[id],
      unit: unitOf(id, context),
      format: formatOf(id, unitOf(id, context)),
    })),
  );
}
