import type { Catalogue } from '../../core/catalogue/catalogue';
import { Decimal } from '../../core/units/decimal';
import { lengthIn, type LengthUnit } from '../../core/units/lengthUnit';
import { hoseKey } from '../jobs/cutLine';

/** Lengths of new reels as the catalogue has them, in `unit`, by hose (`hoseKey`); none without a catalogue. */
export function reelLengths(catalogue: Catalogue | undefined, unit: LengthUnit): ReadonlyMap<string, Decimal> {
  return new Map(
    (catalogue?.hoses ?? []).flatMap(({ hose, reelLength }) =>
      !reelLength
        ? []
        : [[hoseKey(hose), lengthIn({ value: new Decimal(reelLength), unit: catalogue!.units.length }, unit)] as const],
    ),
  );
}
