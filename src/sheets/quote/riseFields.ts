import { typedNumber } from '../../cells/typedNumber';
import type { Rises } from './riseCells';

/** Rises as they are typed, in per cent, by what they are of; a blank one is none. */
export type RiseTexts = Readonly<Record<string, string>>;

export const FITTINGS_KEY = ' fittings';
export const GUARDS_KEY = ' guards';

/** The rises, or for each field that cannot be used what is wrong with it. */
export interface ReadRises {
  readonly rises: Rises | undefined;
  readonly mistakes: Readonly<Record<string, string>>;
}

/** Per cent, with or without its sign; blank is none. */
function readPercent(text: string): number | string {
  const { value, mistake } = typedNumber(text.replace('%', ''), 'rise', { marks: 'noLength' });
  if (mistake) return 'enter per cent, like 5';
  if (value?.lte(-100) || value?.gt(1000)) return 'that is too much to be right';
  return value?.div(100).toNumber() ?? 0;
}

/** Reads the fields; families are hose families of the catalogue. */
export function readRises(texts: RiseTexts, families: readonly string[]): ReadRises {
  const mistakes: Record<string, string> = {};
  const read = (key: string) => {
    const value = readPercent(texts[key] ?? '');
    if (typeof value === 'number') return value;
    mistakes[key] = value;
    return 0;
  };
  const rises: Rises = {
    families: families.map(family => ({ family, rise: read(family) })),
    fittings: read(FITTINGS_KEY),
    guards: read(GUARDS_KEY),
  };
  const all = [...rises.families.map(({ rise }) => rise), rises.fittings, rises.guards];
  const isUsable = Object.keys(mistakes).length === 0 && all.some(rise => rise !== 0);
  return { rises: isUsable ? rises : undefined, mistakes };
}
