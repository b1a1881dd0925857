import { roleOfEnd, type CrimpEndRole, type EndLetter, type Role } from './columnRoles';
import type { FormulaPlace, OfferContext } from './offer';
import { setUpOf, type SetUp } from './setUp';

/** By what the measured crimps of an end are judged: the table's own columns, its limits, what is stated above it, else the catalogue. */
export interface JudgedBy {
  readonly needs: readonly Role[];
  /** The end by whose coupling they are looked up. */
  readonly couplingEnd: EndLetter;
  readonly catalogue: boolean;
  readonly alsoTakes: readonly string[];
  /** Columns that give what is looked up, where they are written at the same time. */
  readonly restsOn: readonly string[];
  readonly readings: (place: FormulaPlace) => string;
  readonly target: (place: FormulaPlace) => string;
  readonly tolerance: (place: FormulaPlace) => string;
  /** Largest spread of the readings; "" where none is known. */
  readonly spread: (place: FormulaPlace) => string;
  readonly hindrance: string | undefined;
  /** Why one formula cannot judge all rows. */
  readonly spreadHindrance: string | undefined;
}

/** Where target or tolerance comes from. */
interface Source {
  readonly needs: readonly Role[];
  readonly of: (place: FormulaPlace) => string;
  /** What is looked up in the catalogue. */
  readonly looked?: SetUp;
  readonly also?: string;
}

/** The end by whose coupling the crimps of an end are looked up. */
const couplingEnd = ({ columns, crimps }: OfferContext, end: EndLetter): EndLetter =>
  end === 'B' && !columns.fittingB && crimps?.isOneCoupling ? 'A' : end;

const ABOVE = { target: 'Target diameter above the table', tolerance: 'Tolerance above the table' } as const;
const LOOKED = { target: ['diameter', 'Target diameter'], tolerance: ['tolerance', 'Tolerance'] } as const;

function sourceOf(name: 'target' | 'tolerance', context: OfferContext, end: EndLetter): Source {
  const { columns, catalogue, crimps } = context;
  const role = (each: CrimpEndRole) => roleOfEnd(each, end);
  const [own, width] = [role(name), role('toleranceWidth')];
  const [smallest, largest] = [role('smallest'), role('largest')];
  const hasLimits = columns[smallest] !== undefined && columns[largest] !== undefined;
  const isByLimits = hasLimits && columns[role('tolerance')] === undefined && columns[width] === undefined;
  // Limits say what is in spec, wherever between them the target lies.
  if (columns[own] && !isByLimits) return { needs: [own], of: ({ at }) => at(own) };
  if (name === 'tolerance' && columns[width]) return { needs: [width], of: ({ at }) => `${at(width)}/2` };
  if (hasLimits) {
    const joined = ({ at }: FormulaPlace) =>
      name === 'target' ? `${at(smallest)}+${at(largest)}` : `${at(largest)}-${at(smallest)}`;
    // Differences of cells carry binary noise that would move a limit.
    return { needs: [smallest, largest], of: place => `ROUND((${joined(place)})/2,9)` };
  }
  const above = crimps?.above[name];
  if (above !== undefined) return { needs: [], of: () => above, also: ABOVE[name] };
  const coupling = couplingEnd(context, end);
  const fitting: Role = `fitting${coupling}`;
  if (!catalogue.present || !columns.hose || !columns[fitting]) return { needs: [own], of: ({ at }) => at(own) };
  const [looked, label] = LOOKED[name];
  return {
    needs: ['hose', fitting],
    of: place => setUpOf(context, coupling, looked, place),
    looked,
    also: `${label} of the catalogue`,
  };
}

/** The largest spread of a row: its own cell, else above the table, else the catalogue's. */
function spreadOf({ columns, crimps }: OfferContext, end: EndLetter) {
  const own = roleOfEnd('largestSpread', end);
  const elsewhere = ({ rows }: FormulaPlace) => crimps?.above.largestSpread ?? (rows && crimps?.spreads(end, rows)[0]) ?? '';
  return (place: FormulaPlace): string => {
    const other = elsewhere(place);
    if (!columns[own]) return other;
    const cell = place.at(own);
    return other === '' ? cell : `IF(${cell}="",${other},${cell})`;
  };
}

const ONE_SPREAD = 'One formula for all rows takes one largest spread: choose one formula a row under Settings.';

export function judgedBy(context: OfferContext, end: EndLetter): JudgedBy {
  const { columns, crimps, options } = context;
  const [target, tolerance] = [sourceOf('target', context, end), sourceOf('tolerance', context, end)];
  const both = [target, tolerance];
  const readings = roleOfEnd('readings', end);
  const hasOwnSpread = columns[roleOfEnd('largestSpread', end)] !== undefined;
  const isVarious = crimps !== undefined && crimps.above.largestSpread === undefined && crimps.spreads(end).length > 1;
  return {
    needs: [...new Set([readings, ...both.flatMap(({ needs }) => needs)])],
    couplingEnd: couplingEnd(context, end),
    catalogue: both.some(({ looked }) => looked !== undefined),
    alsoTakes: both.flatMap(({ also }) => also ?? []),
    restsOn: both.flatMap(({ looked }) => (looked ? [`${looked}${couplingEnd(context, end)}`] : [])),
    readings: ({ at }) => at(readings),
    target: target.of,
    tolerance: tolerance.of,
    spread: spreadOf(context, end),
    hindrance: crimps?.trouble[end],
    spreadHindrance: options.spill && (hasOwnSpread || isVarious) ? ONE_SPREAD : undefined,
  };
}

/** The ends whose crimps are judged, each with what its columns are called by: one where a row is a crimp. */
export const judgedEnds = ({ columns }: Pick<OfferContext, 'columns'>): readonly (readonly [end: EndLetter, letter: string])[] =>
  columns.readingsB
    ? [
        ['A', 'A'],
        ['B', 'B'],
      ]
    : [['A', '']];
