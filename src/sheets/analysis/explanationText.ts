import type { Cause } from '../../core/quality/causes/cause';
import type { CrimpCause } from '../../core/quality/causes/crimpCauseResult';
import type { Explanation } from '../../core/quality/causes/presentState';
import { partKey } from '../../core/catalogue/partName';
import { isoDate } from '../../core/units/sheetDate';
import { dieOf } from './countedCrimps';
import { listText, someOf } from './diameterText';
import type { JudgedCrimp } from './judgedCrimp';

/** What the keys of combinations and dies are called. */
interface Names {
  readonly combinationName: (key: string) => string;
  readonly dieName: (key: string) => string;
}

/** So many explanations are told, and so many names of one. */
const MOST = 3;
const MOST_NAMES = 4;

/** An explanation in words: `the machine changed on 2026-02-09 and the setting of Alder is off`. */
function explanationText({ causes }: Explanation, crimps: readonly JudgedCrimp[], { combinationName, dieName }: Names): string {
  const combinations = [...new Set(crimps.map(({ combination }) => partKey(combination)))];
  const dies = [...new Set(crimps.map(crimp => partKey(dieOf(crimp))))];
  const day = ({ boundary }: Cause) => {
    const date = crimps[boundary ?? 0]?.date;
    return date === undefined ? '' : isoDate(date);
  };
  const parts: string[] = [];
  if (causes.some(({ kind }) => kind === 'machine')) parts.push('the machine is off');
  for (const cause of causes) {
    if (cause.kind === 'machine since' || cause.kind === 'machine until') parts.push(`the machine changed on ${day(cause)}`);
    if (cause.kind === 'machine rising') parts.push(`the machine has drifted since ${day(cause)}`);
    if (cause.kind === 'machine rising until') parts.push(`the machine drifted until ${day(cause)}`);
    if (cause.kind === 'die since') parts.push(`die ${dieName(dies[cause.of]!)} changed on ${day(cause)}`);
    if (cause.kind === 'die rising') parts.push(`die ${dieName(dies[cause.of]!)} has drifted since ${day(cause)}`);
  }
  const named = (kind: Cause['kind'], name: (of: number) => string) =>
    causes.filter(cause => cause.kind === kind).map(({ of }) => name(of));
  const worn = named('die', of => dieName(dies[of]!));
  const off = named('combination', of => combinationName(combinations[of]!));
  if (worn.length > 0)
    parts.push(`${worn.length === 1 ? 'die' : 'dies'} ${someOf(worn, MOST_NAMES)} ${worn.length === 1 ? 'is' : 'are'} off`);
  if (off.length > 0)
    parts.push(
      `the ${off.length === 1 ? 'setting' : 'settings'} of ${someOf(off, MOST_NAMES)} ${off.length === 1 ? 'is' : 'are'} off`,
    );
  return parts.length === 0 ? 'nothing is off, it is scatter' : listText(parts);
}

/** The best explanation and those as good, in words; none where there are no others. */
export function explanationTexts({ best, rivals }: CrimpCause, crimps: readonly JudgedCrimp[], names: Names): string[] {
  if (!best) return [];
  const texts = [best, ...rivals].map(each => explanationText(each, crimps, names));
  const distinct = [...new Set(texts)];
  return distinct.length < 2 ? [] : distinct.slice(0, MOST);
}
