import { addressOf, columnLetters } from '../../workbook/a1';
import type { MeasureUnit } from '../../core/units/measureUnit';
import type { CatalogueState } from '../catalogue/catalogueState';
import type { CrimpTable } from '../crimps/crimpTable';
import { toleranceAdvice } from '../crimps/toleranceAdvice';
import type { TableQuestion } from '../table/tableQuestion';
import { pairOf, type CrimpBlock } from './crimpBlocks';
import { JUDGED_BY, type EndLetter } from './columnRoles';

/** Numbers that may be stated once above a table of crimps. */
type AboveName = 'target' | 'tolerance' | 'largestSpread';

/** What formulas that judge crimps need to know besides columns. */
export interface CrimpFacts {
  /** Why the crimps of an end cannot be judged by formulas, in words. */
  readonly trouble: Readonly<Partial<Record<EndLetter, string>>>;
  /** Both ends of a row have the same coupling. */
  readonly isOneCoupling: boolean;
  /** Numbers above the table, as they are written in formulas. */
  readonly above: Readonly<Partial<Record<AboveName, string>>>;
  /** The catalogue's largest spreads for rows of the table: one where all agree. Undefined: all rows. */
  readonly spreads: (end: EndLetter, rows?: { readonly first: number; readonly last: number }) => readonly string[];
}

const inWords = (unit: MeasureUnit) => (unit.symbol === 'in' ? 'inches' : unit.symbol);

/** Limits count where target or tolerance has no column of its own. */
export const goesByLimits = ({ roles }: CrimpBlock): boolean => {
  const hasTolerance = roles.tolerance !== undefined || roles.toleranceWidth !== undefined;
  return roles.smallest !== undefined && roles.largest !== undefined && !(roles.target !== undefined && hasTolerance);
};

/** Above the table, or in the catalogue: whether the target, or the tolerance, is known without a column. */
function isKnownElsewhere({ above }: CrimpTable, name: 'target' | 'tolerance', canLookUp: boolean): boolean {
  return above.lengths[name] !== undefined || canLookUp;
}

/** What must be answered before `Min` and `Max` count; `none`: they do not. */
export function openLimits(crimps: CrimpTable, block: CrimpBlock, canLookUp: boolean): TableQuestion | 'none' | undefined {
  if (!goesByLimits(block)) return undefined;
  const { roles } = block;
  const bare = crimps.bareLimits[(/[AB]$/.exec(roles.smallest!)?.[0] ?? '') as '' | EndLetter];
  if (!bare) return undefined;
  const [target, tolerance] = (['target', 'tolerance'] as const).map(name => isKnownElsewhere(crimps, name, canLookUp));
  const hasTolerance = roles.tolerance ?? roles.toleranceWidth;
  if (bare.meaning === 'either') return (roles.target || target) && (hasTolerance || tolerance) ? 'none' : bare.question;
  return (!roles.target && target) || (!hasTolerance && tolerance) ? bare.question : undefined;
}

function unitTrouble(crimps: CrimpTable, block: CrimpBlock): string | undefined {
  const { reader, unit } = crimps;
  const { target, tolerance, toleranceWidth, smallest, largest, largestSpread } = block.roles;
  const limits = goesByLimits(block) ? [smallest, largest] : [];
  const columns = [target, tolerance ?? toleranceWidth, ...limits, largestSpread].filter(role => role !== undefined);
  const ofColumns = columns.map(role => [`column ${reader.heading(role)}`, reader.unitOf(role)] as const);
  const isFree = (name: AboveName) =>
    name === 'largestSpread'
      ? !largestSpread
      : limits.length === 0 && !(name === 'target' ? target : (tolerance ?? toleranceWidth));
  const ofAbove = (['target', 'tolerance', 'largestSpread'] as const)
    .filter(isFree)
    .map(name => [`what is stated above the table`, crimps.above.lengths[name]?.unit] as const);
  const other = [...ofColumns, ...ofAbove].find(([, own]) => unit && own && own.symbol !== unit.symbol);
  if (!other || !unit) return undefined;
  const [what, own] = other;
  return `The readings are in ${inWords(unit)}, ${what} is in ${inWords(own!)}: they must be the same.`;
}

/** Rows that say of which end they are, in a table whose ends differ. */
function endTrouble({ columns, layout, reader }: CrimpTable, { roles }: CrimpBlock): string | undefined {
  if (layout !== 'row' || columns.end === undefined) return undefined;
  const isJudgedByColumns = roles.target !== undefined && (roles.tolerance ?? roles.toleranceWidth) !== undefined;
  const differs = JUDGED_BY.some(field => columns[`${field}B`] !== undefined);
  if (!differs && (columns.fittingB === undefined || isJudgedByColumns)) return undefined;
  return `Column ${reader.heading('end')} says of which end each row is, and the ends have columns of their own: formulas cannot choose between them. Judge these crimps in QA › Analysis.`;
}

function readingTrouble({ layout }: CrimpTable, { end, readings }: CrimpBlock): string | undefined {
  const ofEnd = layout === 'ends' ? ` of end ${end}` : '';
  if (readings.length < 2) return `The crimps${ofEnd} have one reading each: a verdict takes two or more side by side.`;
  if (readings.every((column, index) => column === readings[0]! + index)) return undefined;
  const letters = readings.map(columnLetters).join(', ');
  return `The readings${ofEnd} (columns ${letters}) do not lie side by side: move the columns between them.`;
}

function toleranceTrouble({ table }: CrimpTable, block: CrimpBlock): string | undefined {
  const { tolerance, toleranceWidth } = block.roles;
  if (tolerance !== undefined || toleranceWidth !== undefined || goesByLimits(block)) return undefined;
  const advice = toleranceAdvice(table.headings);
  return advice && `The tolerance is not known: ${advice}.`;
}

const OPEN_LIMITS = 'It is not known whether Min and Max are limits: answer the question about them first.';

function aboveIn({ above, reader }: CrimpTable): CrimpFacts['above'] {
  const written = (['target', 'tolerance', 'largestSpread'] as const).flatMap(name => {
    const value = above.lengths[name];
    if (!value) return [];
    const isHalf = name === 'tolerance' && !above.cells.tolerance;
    const place = above.cells[isHalf ? 'toleranceWidth' : name];
    if (!place || typeof reader.cells.value(place.row, place.column) !== 'number') return [[name, value.value.toString()]];
    const cell = addressOf({ ...place, rows: 1, columns: 1 }).replace(/^([A-Z]+)(\d+)$/, '$$$1$$$2');
    return [[name, isHalf ? `${cell}/2` : cell]];
  });
  return Object.fromEntries(written) as CrimpFacts['above'];
}

/** What is known of the crimps of a table. */
export function crimpFacts(
  crimps: CrimpTable,
  blocks: readonly CrimpBlock[],
  open: ReadonlySet<EndLetter>,
  { largestSpread }: Pick<CatalogueState, 'largestSpread'>,
): CrimpFacts {
  const trouble = blocks.flatMap(block => {
    const sentence =
      readingTrouble(crimps, block) ??
      endTrouble(crimps, block) ??
      toleranceTrouble(crimps, block) ??
      (open.has(block.end) ? OPEN_LIMITS : undefined) ??
      unitTrouble(crimps, block);
    return sentence ? [[block.end, sentence]] : [];
  });
  const { block } = crimps.table;
  const all = { first: block.row + 1, last: block.row + block.rows - 1 };
  return {
    trouble: Object.fromEntries(trouble) as CrimpFacts['trouble'],
    isOneCoupling: crimps.layout === 'ends' && crimps.columns.fittingB === undefined && crimps.columns.fitting !== undefined,
    above: aboveIn(crimps),
    spreads: (end, { first, last } = all) => {
      const { unit } = crimps;
      if (!largestSpread || !unit) return [];
      const rows = Array.from({ length: last - first + 1 }, (_, i) => first + i);
      const found = rows.map(row => largestSpread(...pairOf(crimps, end, row), unit)).filter(each => each !== undefined);
      return [...new Set(found)];
    },
  };
}
