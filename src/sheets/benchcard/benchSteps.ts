import type { Decimal } from '../../core/units/decimal';
import { lengthText } from '../table/lengthCell';
import { cutLimits, isTurned, type BenchCard, type CrimpEnd } from '../jobs/benchCard';
import { WHERE_TO_MEASURE } from '../print/cautions';
import { proofText, type ProofRule } from './proofTest';

/** One step of the work, with what has to be known for it. */
export interface BenchStep {
  readonly name: string;
  readonly text: string;
}

const NOT_STATED = 'not stated';

/** A crimp diameter or another small length: as many decimals as its number has. */
export function crimpText(length: Decimal | undefined): string {
  return length?.toDecimalPlaces(4).toString() ?? NOT_STATED;
}

/** Limits of the crimp diameter, with equal decimals; "" where they are not known. */
export function crimpLimits({ smallest, largest }: CrimpEnd): string {
  if (!smallest || !largest) return '';
  const places = Math.min(4, Math.max(smallest.decimalPlaces(), largest.decimalPlaces()));
  return `${smallest.toFixed(places)} … ${largest.toFixed(places)}`;
}

function cutText(card: BenchCard): string {
  const { cutLength, unit } = card;
  if (!cutLength) return `cut length ${NOT_STATED}`;
  const limits = cutLimits(card);
  const between = limits ? `, limits ${lengthText(limits.shortest, unit)} … ${lengthText(limits.longest, unit)}` : '';
  return `${card.quantity || '?'} × ${lengthText(cutLength, unit)} ${unit}${between}; square, clean cut`;
}

/** Skive of an end for a table cell: `out 25`, `in 4`, `none`, or a dash where the data do not say. */
export function skiveShort({ skiveOutside, skiveInside }: CrimpEnd): string {
  const parts = [
    skiveOutside?.gt(0) && `out ${crimpText(skiveOutside)}`,
    skiveInside?.gt(0) && `in ${crimpText(skiveInside)}`,
  ].filter(Boolean);
  return parts.length > 0 ? parts.join(', ') : skiveOutside || skiveInside ? 'none' : '—';
}

function skiveText(ends: readonly CrimpEnd[], unit: string): string | undefined {
  const texts = ends.map(({ end, skiveOutside, skiveInside }) => {
    const parts = [
      skiveOutside && !skiveOutside.isZero() && `outside ${crimpText(skiveOutside)} ${unit}`,
      skiveInside && !skiveInside.isZero() && `inside ${crimpText(skiveInside)} ${unit}`,
      !skiveOutside && !skiveInside && `${NOT_STATED}: ask before you crimp`,
    ].filter(Boolean);
    return parts.length > 0 ? `${end} ${parts.join(', ')}` : '';
  });
  return texts.some(Boolean) ? texts.filter(Boolean).join('; ') : undefined;
}

function crimpStep(end: CrimpEnd): BenchStep {
  const limits = crimpLimits(end);
  return {
    name: `Crimp end ${end.end}`,
    text: `${end.end === 'B' ? 'insert as end A; ' : ''}die ${end.die ?? NOT_STATED}, dial ${end.dial ?? NOT_STATED}; to ${crimpText(end.diameter)}${limits && ` (${limits})`}`,
  };
}

/** The steps of one card in working order. */
export function benchSteps(card: BenchCard, rule: ProofRule): readonly BenchStep[] {
  const { ends, unit, guard } = card;
  const [a, b] = ends;
  const skive = skiveText(ends, unit);
  const marks = ends.map(end => `${end.end} ${end.insertionDepth ? `${crimpText(end.insertionDepth)} ${unit}` : NOT_STATED}`);
  return [
    { name: 'Cut', text: cutText(card) },
    ...(skive ? [{ name: 'Skive', text: skive }] : []),
    { name: 'Clean', text: 'blow or shoot the bore clean from both ends' },
    {
      name: 'Sleeves and guards',
      text: guard ? `slide on now: ${guard}` : 'none on this line; ferrules where they are separate',
    },
    { name: 'Mark', text: `insertion mark from the hose’s end: ${marks.join(', ')}` },
    { name: 'Insert', text: 'push on until the ferrule reaches the mark; check it again in the dies' },
    crimpStep(a),
    { name: 'Measure A', text: `four readings ${WHERE_TO_MEASURE}; the mean counts` },
    ...(isTurned(card) ? [{ name: 'Turn', text: 'set end B by the clock picture before you crimp it' }] : []),
    crimpStep(b),
    { name: 'Measure B', text: 'as end A' },
    { name: 'Bore', text: 'check that the bore is clear, both couplings' },
    { name: 'Test', text: proofText(card.workingPressure, card.pressureUnit, rule) },
    { name: 'Flush', text: 'flush, and let it drain' },
    { name: 'Cap', text: 'cap both ends at once' },
    { name: 'Tag', text: 'maker, maximum working pressure with unit, year and month' },
  ];
}

/** Why an end must not be made; undefined where it may. */
function stopOfEnd({ problem, die, dial, diameter, insertionDepth }: CrimpEnd): string | undefined {
  if (problem) return problem;
  const open = [!die && 'die', !dial && 'dial', !diameter && 'crimp diameter', !insertionDepth && 'insertion depth'];
  const names = open.filter(Boolean).join(', ');
  return names ? `${names} not stated: do not assemble before the maker’s data are here` : undefined;
}

/** What stops this line: read before anything is cut. Ends that are stopped by the same are named together. */
export function stopsOf(card: BenchCard): readonly string[] {
  const [a, b] = card.ends.map(stopOfEnd);
  const ends = a && a === b ? [`Ends A and B: ${a}`] : [a && `End A: ${a}`, b && `End B: ${b}`].flatMap(stop => stop || []);
  const turn =
    isTurned(card) && card.twist === undefined
      ? ['Both ends are bent, but the sheet gives no twist angle: ask before you crimp end B']
      : [];
  return [...card.problems, ...ends, ...turn];
}

/** Assemblies of one line for whose readings there is room on its card. */
export const READING_ROWS = 3;

/** Where the readings of further pieces go; "" where all have room. */
export function furtherPieces({ quantity }: BenchCard): string {
  if (quantity <= READING_ROWS) return '';
  const last = quantity === READING_ROWS + 1 ? `Piece ${quantity}` : `Pieces ${READING_ROWS + 1} … ${quantity}`;
  return ` ${last}: on the readings sheet.`;
}

/** Where the set-up of each end comes from and what its data say besides; "" where nothing is known. */
export function sourcesOf({ ends }: BenchCard): string {
  const sources = ends.flatMap(({ end, source }) => (source ? [`${end}: ${source}`] : [])).join('; ');
  const [a, b] = ends.map(({ remark }) => remark);
  const remarks = a && a === b ? [`A and B: ${a}`] : [a && `A: ${a}`, b && `B: ${b}`].filter(Boolean);
  return [sources && `Set-up from ${sources}.`, remarks.length > 0 && `Note of the data: ${remarks.join('; ')}.`]
    .filter(Boolean)
    .join(' ');
}
