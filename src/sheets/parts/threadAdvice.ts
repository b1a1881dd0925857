import { PITCH_SHARE, type PossibleThread } from '../../core/threads/findThread';
import { Decimal } from '../../core/units/decimal';
import { convertLength, MM_PER_INCH, type LengthUnit } from '../../core/units/lengthUnit';

/** Diameters closer than this are not told apart by a caliper on a worn or plated thread. Common practice. */
const APART_MM = new Decimal('0.3');
const TAPER = 'taper thread';

const isSamePitch = (a: PossibleThread, b: PossibleThread) => a.pitch.minus(b.pitch).abs().lte(b.pitch.times(PITCH_SHARE));

/** Pitch as its standard gives it, threads per inch or mm: `11 per inch`, `2 mm`. */
export function pitchText({ pitch }: PossibleThread, unit: LengthUnit): string {
  const other = MM_PER_INCH.div(pitch);
  const [mm, perInch] = unit === 'mm' ? [pitch, other] : [other, pitch];
  // Threads in inches come by the half: 11.5 per inch.
  const halves = perInch.times(2);
  return halves.minus(halves.round()).abs().lt('1e-6') ? `${perInch.toDecimalPlaces(1)} per inch` : `${mm.toDecimalPlaces(2)} mm`;
}

/** Lengths of a measurement as they are shown. */
export const shownLength = (length: Decimal, unit: LengthUnit): string =>
  `${length.toDecimalPlaces(unit === 'mm' ? 2 : 4)} ${unit}`;

const isAsThick = (a: PossibleThread, b: PossibleThread, unit: LengthUnit) =>
  convertLength(a.diameter.minus(b.diameter).abs(), unit, 'mm').lte(APART_MM);

/** Another pitch than the likeliest's: counting the threads decides. */
function countThem([first, ...others]: readonly PossibleThread[], unit: LengthUnit): string[] {
  const rival = others.find(other => isAsThick(other, first!, unit) && !isSamePitch(other, first!));
  if (!rival) return [];
  const apart = shownLength(rival.diameter.minus(first!.diameter).abs(), unit);
  const pitches = [first!, rival].map(each => pitchText(each, unit)).join(' or ');
  return [`${first!.thread} or ${rival.thread}: ${apart} apart, less than a caliper can tell. Count the threads: ${pitches}.`];
}

/** A straight thread and a tapered one of the same diameter and pitch. */
function measureTaper(found: readonly PossibleThread[], unit: LengthUnit): string[] {
  const likely = found.filter(each => isAsThick(each, found[0]!, unit));
  return likely
    .filter(({ usedWith }) => usedWith === TAPER)
    .flatMap(tapered => {
      const straight = likely.find(
        each => each.usedWith !== TAPER && isSamePitch(each, tapered) && isAsThick(each, tapered, unit),
      );
      return straight
        ? [`${straight.thread} or ${tapered.thread}: measure at both ends of the thread. A taper gets thicker.`]
        : [];
    });
}

/** One thread that several end forms use. */
function sharedThread([first]: readonly PossibleThread[]): string[] {
  const uses = first!.usedWith.split('; ');
  if (uses.length < 2) return [];
  return [
    `${first!.thread} is used with ${uses.join(' or ')}. The thread does not decide it: measure the tube or the cone as well.`,
  ];
}

/** What a caliper cannot tell about the likeliest thread, and what to do; a sentence each. */
export function threadAdvice(found: readonly PossibleThread[], unit: LengthUnit): readonly string[] {
  return [...countThem(found, unit), ...measureTaper(found, unit), ...sharedThread(found)];
}
