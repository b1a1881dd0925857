import { caliperFormat, depthFormat } from '../table/numberFormats';
import { call, partOf, type OfferContext, type FormulaPlace, type Recipe } from './offer';
import type { Role } from './columnRoles';

/** Which column of CRIMPSETUP's answer is what. */
const SET_UP = { die: 1, dial: 2, diameter: 3, tolerance: 4, insertion: 5 } as const;

type SetUp = keyof typeof SET_UP;

const HEADINGS: readonly (readonly [id: SetUp, heading: string])[] = [
  ['die', 'Die'],
  ['dial', 'Dial'],
  ['diameter', 'Crimp diameter'],
  ['tolerance', 'Tolerance'],
  ['insertion', 'Insertion depth'],
];

/** The machine of the table's own column, else the one that was chosen, as an argument; "" where none is. */
function machineArgument({ columns, options }: OfferContext, { at }: FormulaPlace): string {
  if (options.machine) return `"${options.machine.replace(/"/g, '""')}"`;
  return columns.crimper ? at('crimper') : '';
}

/** The set-up of one end, as a call. */
function setUpCall(context: OfferContext, end: Role, place: FormulaPlace): string {
  return call('CRIMPSETUP', [place.catalogue, place.at('hose'), place.at(end), machineArgument(context, place)]);
}

/** A value for end A: of the column that is written at the same time, else looked up. */
export function setUpOfEndA(context: OfferContext, field: SetUp, place: FormulaPlace): string {
  return place.added?.(`${field}A`) ?? partOf(setUpCall(context, 'fittingA', place), place, SET_UP[field]);
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

/** Target and tolerance of the crimps that were measured: the table's own columns, else the catalogue's for hose and fitting A. */
export interface JudgedBy {
  readonly needs: readonly Role[];
  readonly catalogue: boolean;
  readonly alsoTakes: readonly string[];
  /** Columns that give what is looked up, where they are written at the same time. */
  readonly restsOn: readonly string[];
  readonly target: (place: FormulaPlace) => string;
  readonly tolerance: (place: FormulaPlace) => string;
}

export function judged(context: OfferContext): JudgedBy {
  const { columns } = context;
  const canLookUp = context.catalogue.present && !!columns.hose && !!columns.fittingA;
  const own = { target: !!columns.target || !canLookUp, tolerance: !!columns.tolerance || !canLookUp };
  const looked = (field: SetUp) => (place: FormulaPlace) => setUpOfEndA(context, field, place);
  const typed: Role[] = [...(own.target ? (['target'] as const) : []), ...(own.tolerance ? (['tolerance'] as const) : [])];
  const catalogue = !own.target || !own.tolerance;
  return {
    needs: ['readings', ...typed, ...(catalogue ? (['hose', 'fittingA'] as const) : [])],
    catalogue,
    alsoTakes: [...(own.target ? [] : ['Target diameter']), ...(own.tolerance ? [] : ['Tolerance'])].map(
      word => `${word} of the catalogue`,
    ),
    restsOn: [...(own.target ? [] : ['diameterA']), ...(own.tolerance ? [] : ['toleranceA'])],
    target: own.target ? ({ at }) => at('target') : looked('diameter'),
    tolerance: own.tolerance ? ({ at }) => at('tolerance') : looked('tolerance'),
  };
}

/** Judgements of measured crimps. */
export function judgementRecipes(context: OfferContext): readonly Recipe[] {
  const { needs, catalogue, alsoTakes, restsOn, target, tolerance } = judged(context);
  const common = { crimp: true, catalogue, needs, alsoTakes, restsOn, ...(catalogue && { unitMatters: 'diameter' as const }) };
  const unit = context.units.diameter ?? (catalogue ? context.catalogue.diameterUnit : undefined);
  const measured = (place: FormulaPlace) => [place.at('readings'), target(place), tolerance(place)];
  const detail = (place: FormulaPlace) => call('CRIMPDETAIL', measured(place));
  return [
    {
      ...common,
      id: 'check',
      heading: 'Verdict',
      call: place => call('CRIMPCHECK', measured(place)),
      alsoFrom: { call: detail, part: 4 },
      good: 'IN SPEC',
    },
    {
      ...common,
      id: 'deviation',
      heading: 'Deviation',
      call: detail,
      part: 2,
      unit,
      // A mean of readings: one digit more than a caliper shows.
      format: unit === 'in' ? '0.0000' : '0.000',
    },
  ];
}
