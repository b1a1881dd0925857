import type { Decimal } from '../../core/units/decimal';
import { SMALL_PLACES } from '../../core/units/decimalPlaces';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { lengthText } from '../table/lengthText';
import { limitsText, smallText } from '../table/smallText';
import { cutLimits, isTurned, type BenchCard, type CrimpEnd } from '../jobs/benchCard';
import { proofText, type ProofRule } from './proofPressure';

/** One step of the work, with what has to be known for it. */
export interface BenchStep {
  readonly name: string;
  readonly text: string;
}

const NOT_STATED = 'not stated';

/** A crimp diameter or another small length. */
export function crimpText(length: Decimal | undefined, unit: LengthUnit): string {
  return length ? smallText(length, unit) : NOT_STATED;
}

/** The dial in a table: `trial` where the machine has none yet. */
export const dialText = ({ dial, trial }: CrimpEnd): string => dial ?? (trial ? 'trial' : '—');

/** Limits of the crimp diameter, with equal decimals; "" where they are not known. */
export function diameterLimits({ smallest, largest }: CrimpEnd, unit: LengthUnit): string {
  return smallest && largest ? limitsText(smallest, largest, SMALL_PLACES[unit]) : '';
}

/** A coupling with its ferrule, or that the end stays plain hose. */
export function couplingText({ fitting, ferrule, isPlain }: CrimpEnd): string {
  if (isPlain) return 'plain hose';
  return `${fitting || NOT_STATED}${ferrule ? ` + ${ferrule}` : ''}`;
}

function cutText(card: BenchCard): string {
  const { cutLength, unit } = card;
  if (!cutLength) return `length ${NOT_STATED}: do not cut`;
  const limits = cutLimits(card);
  const between = limits ? ` (${lengthText(limits.shortest, unit)} … ${lengthText(limits.longest, unit)})` : '';
  return `${card.quantity || '?'} × ${lengthText(cutLength, unit)} ${unit}${between}, square and clean.`;
}

/** Skive of an end for a table cell: `out 25`, `in 4`, `none`, or a dash where the data do not say. */
export function skiveShort({ skiveOutside, skiveInside }: CrimpEnd, unit: LengthUnit): string {
  const parts = [
    skiveOutside?.gt(0) && `out ${crimpText(skiveOutside, unit)}`,
    skiveInside?.gt(0) && `in ${crimpText(skiveInside, unit)}`,
  ].filter(Boolean);
  return parts.length > 0 ? parts.join(', ') : skiveOutside || skiveInside ? 'none' : '—';
}

/** What is said of each end: `34 mm from end A, 30 mm from end B`; once where both are alike. */
function ofEnds(ends: readonly CrimpEnd[], say: (end: CrimpEnd) => string, between: string): string {
  const texts = ends.map(say);
  const [one, other] = texts;
  if (one !== undefined && one === other) return one && `${one}${between}each end`;
  return ends.flatMap(({ end }, index) => (texts[index] ? [`${texts[index]}${between}end ${end}`] : [])).join(', ');
}

function skiveText(ends: readonly CrimpEnd[], unit: LengthUnit): string | undefined {
  const say = ({ skiveOutside, skiveInside }: CrimpEnd): string => {
    const parts = [
      skiveOutside?.gt(0) && `${crimpText(skiveOutside, unit)} ${unit} outside`,
      skiveInside?.gt(0) && `${crimpText(skiveInside, unit)} ${unit} inside`,
    ].filter(Boolean);
    return !skiveOutside && !skiveInside ? `as the maker says (${NOT_STATED} here)` : parts.join(' and ');
  };
  const text = ofEnds(ends, say, ' at ');
  return text && `${text}.`;
}

function crimpSteps(end: CrimpEnd, unit: LengthUnit, isFirst: boolean): readonly BenchStep[] {
  if (end.isPlain) return [];
  const limits = diameterLimits(end, unit);
  const dial = end.dial ?? end.trial ?? NOT_STATED;
  const missing = [!end.die && 'die', !end.diameter && 'crimp diameter'].filter(Boolean);
  const setUp = `die ${end.die}, ${/^no dial/.test(dial) ? dial : `dial ${dial}`}, down to ${crimpText(end.diameter, unit)}${limits && ` (${limits})`}.`;
  return [
    {
      name: `Crimp end ${end.end}:`,
      text: missing.length > 0 ? `not yet. Ask first: ${missing.join(' and ')} ${NOT_STATED}.` : setUp,
    },
    {
      name: `Measure end ${end.end}`,
      text: isFirst ? 'in four places, as the readings below say. The mean counts.' : 'the same way.',
    },
  ];
}

/** Coupling by coupling: marks, insertion, crimps. */
function couplingSteps(card: BenchCard): readonly BenchStep[] {
  const { ends, unit } = card;
  const coupled = ends.filter(({ isPlain }) => !isPlain);
  if (coupled.length === 0) return [];
  const depth = ({ insertionDepth }: CrimpEnd) => (insertionDepth ? `${crimpText(insertionDepth, unit)} ${unit}` : NOT_STATED);
  const [a, b] = ends;
  return [
    {
      name: 'Mark',
      text: coupled.some(({ insertionDepth }) => insertionDepth)
        ? `the insertion depth on the hose: ${ofEnds(coupled, depth, ' from ')}.`
        : `the insertion depth on the hose. It is ${NOT_STATED}: ask first.`,
    },
    { name: 'Push', text: 'each coupling on until the ferrule meets the mark. Check the mark again in the dies.' },
    ...crimpSteps(a, unit, true),
    ...(isTurned(card) ? [{ name: 'Turn', text: 'end B as the clock picture shows. Then crimp it.' }] : []),
    ...crimpSteps(b, unit, coupled[0] === b),
    { name: 'Look', text: 'through the bore at both couplings: it must be clear.' },
  ];
}

function testStep(card: BenchCard, rule: ProofRule): readonly BenchStep[] {
  if (card.ends.some(({ isPlain }) => isPlain)) return [];
  const text = isStopped(card) ? 'no piece while this card says STOP.' : proofText(card.workingPressure, card.pressureUnit, rule);
  return [{ name: 'Test', text }];
}

/** The steps of one card in working order. */
export function benchSteps(card: BenchCard, rule: ProofRule): readonly BenchStep[] {
  const { ends, unit, guard } = card;
  const skive = skiveText(
    ends.filter(({ isPlain }) => !isPlain),
    unit,
  );
  return [
    { name: 'Cut', text: cutText(card) },
    ...(skive ? [{ name: 'Skive', text: skive }] : []),
    { name: 'Clean', text: 'the bore from both ends: blow it out or shoot a plug through.' },
    { name: 'Slide on', text: guard ? `${guard}, and loose ferrules.` : 'loose ferrules. No sleeve or guard on this line.' },
    ...couplingSteps(card),
    ...testStep(card, rule),
    { name: 'Flush', text: 'the hose, let it drain, and cap both ends.' },
    { name: 'Tag', text: 'it: maker, maximum working pressure with unit, year and month.' },
  ];
}

/** Why an end must not be made; undefined where it may. */
function stopOfEnd({ problem, isPlain, die, dial, trial, diameter, insertionDepth }: CrimpEnd): string | undefined {
  if (problem) return problem;
  if (isPlain) return undefined;
  const open = [!die && 'die', !dial && !trial && 'dial', !diameter && 'crimp diameter', !insertionDepth && 'insertion depth'];
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

/** True where a card says STOP, for whatever reason: no pressure stands on it then. */
export const isStopped = (card: BenchCard): boolean => card.isStop || stopsOf(card).length > 0;

/** Working pressure with its unit, where the line may be made. */
export function pressureText(card: BenchCard): string {
  if (isStopped(card)) return 'none: STOP';
  return card.workingPressure ? `${card.workingPressure} ${card.pressureUnit}` : NOT_STATED;
}

/** Where the set-up of each end comes from and what its data say besides; "" where nothing is known. */
export function sourcesOf({ ends, notes }: BenchCard): string {
  const sources = ends.flatMap(({ end, source }) => (source ? [`${end}: ${source}`] : [])).join('; ');
  const [a, b] = ends.map(({ remark }) => remark);
  const remarks = a && a === b ? [`A and B: ${a}`] : [a && `A: ${a}`, b && `B: ${b}`].filter(Boolean);
  const trials = ends.flatMap(({ end, trial }) => (trial ? [`End ${end}: ${trial}.`] : []));
  return [
    ...trials,
    sources && `Set-up from ${sources}.`,
    remarks.length > 0 && `Note of the data: ${remarks.join('; ')}.`,
    notes.length > 0 && `To know: ${notes.join('; ')}.`,
  ]
    .filter(Boolean)
    .join(' ');
}
