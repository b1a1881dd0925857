import { isHiddenSheet, sheetRemark } from './copyReport';
import type { CopySource } from './copySource';
import type { CopyWishes } from './copyWishes';

/** A sheet that may be copied, as the form shows it. */
export interface SheetTick {
  readonly name: string;
  readonly isTicked: boolean;
  /** It cannot be ticked until parts data are wanted. */
  readonly isShut: boolean;
  /** Why it is not ticked by itself: `price list, hidden`; blank where nothing speaks against it. */
  readonly remark: string;
}

/** What decides about ticks: the kind of copy, and what somebody ticked or unticked. */
export interface TickChoice extends Pick<CopyWishes, 'kind' | 'withParts'> {
  readonly sheets: Readonly<Record<string, boolean>>;
}

/**
 * The sheets that hold something. Those with parts data are ticked by themselves only where parts data are wanted, hidden ones not for a
 * customer; those of the catalogue are shut until then.
 */
export function sheetTicks(source: CopySource, { kind, withParts, sheets }: TickChoice): readonly SheetTick[] {
  return source.names.flatMap(name => {
    if (!source.sheets.has(name)) return [];
    const parts = withParts ? undefined : source.parts.get(name);
    const isHidden = isHiddenSheet(source, name);
    const isShut = parts?.isInUse ?? false;
    const isForAll = !parts && !(kind === 'values' && isHidden);
    const remark = withParts ? (isHidden ? 'hidden' : '') : sheetRemark(source, name);
    return [{ name, isShut, isTicked: !isShut && (sheets[name] ?? isForAll), remark }];
  });
}
