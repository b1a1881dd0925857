import { Decimal } from '../../core/units/decimal';
import { convertMeasure, measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { hoseKey } from '../jobs/cutLine';
import type { CutList, ListedCut } from '../cutlist/readCutList';
import type { HoseNeed } from './purchaseNeeds';
import type { ReelsWanted } from './purchasePlan';

/** A cut list is rounded to what the bench can cut: so much a piece may differ from the length worked out. */
const BENCH_STEP = { mm: new Decimal(2), in: new Decimal('0.125') } as const;

/** The cuts of a list that are for these pieces; undefined where it does not have all of them. */
function cutsFor(
  { hose, cuts }: HoseNeed,
  list: CutList,
  catalogueUnit: MeasureUnit,
  unit: LengthUnit,
): readonly ListedCut[] | undefined {
  const free = list.cuts.filter(cut => hoseKey(cut.hose) === hoseKey(hose));
  const taken: ListedCut[] = [];
  for (const { line, length, quantity } of cuts) {
    const wanted = convertMeasure(length, catalogueUnit, measureUnit('length', unit)!);
    const own = free.filter(cut => cut.line === line && cut.length.minus(wanted).abs().lte(BENCH_STEP[unit])).slice(0, quantity);
    if (own.length < quantity) return undefined;
    taken.push(...own);
    own.forEach(cut => free.splice(free.indexOf(cut), 1));
  }
  return taken;
}

/**
 * Reels to buy of a hose by the cut lists that stand: none where one of them cuts every piece from the rack, else not known from them.
 * @param lists the newest first
 * @param catalogueUnit unit of the pieces
 * @param unit unit of the lists
 */
export function reelsOfLists(
  need: HoseNeed,
  lists: readonly CutList[],
  catalogueUnit: MeasureUnit,
  unit: LengthUnit,
): ReelsWanted {
  for (const list of lists) {
    const cuts = cutsFor(need, list, catalogueUnit, unit);
    if (!cuts) continue;
    const stock = new Set(cuts.map(({ reel }) => reel)).size;
    return {
      reels: 0,
      note: `sheet ${list.sheet}: cut from ${stock} ${stock === 1 ? 'piece' : 'pieces'} of the rack, nothing to buy`,
    };
  }
  const names = lists.map(({ sheet }) => sheet).join(', ');
  return {
    reels: undefined,
    note: `not all of it stands in sheet ${names}: cut lengths plus scrap; ends left on reels are not counted`,
  };
}
