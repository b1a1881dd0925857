import { anyOf, refusedOptional, rowFormula } from './conditions';
import { CoupledExpressions } from './coupledHose';
import type { NativeArgument, NativeArguments, NativeFunction } from './nativeFunction';
import { NotNative } from '../notNative';

/** An argument that a plain formula has nothing for: blank now, and #N/A once it is filled in. */
export function mustStayBlank(argument: NativeArgument | undefined, what: string): string[] {
  if (!argument) return [];
  if (argument.isConstant || argument.value !== '') throw new NotNative(`${what} cannot be taken into account`);
  return [`${argument.text}<>""`];
}

/** Why a row is refused for its temperature or fluid; a reason where pressure and verdict depend on them, but neither cut length nor mass. */
function refusedUse(call: NativeArguments): string[] | NotNative {
  const [temperature, fluid] = [call[5], call[6]];
  try {
    return [...mustStayBlank(temperature, 'a temperature'), ...mustStayBlank(fluid, 'a fluid')];
  } catch (error) {
    const isNumber = !temperature || temperature.value === '' || typeof temperature.value === 'number';
    const isName = !fluid || typeof fluid.value === 'string';
    if (error instanceof NotNative && isNumber && isName) return error;
    throw error;
  }
}

/** The rating of the weakest part, blank where one has none. */
function pressure(coupled: CoupledExpressions): string {
  const ratings = [coupled.ofHose('workingPressure'), ...coupled.ofFittings('workingPressure')];
  if (ratings.includes(undefined)) return '""';
  return `IF(${anyOf(ratings.map(rating => `${rating}=""`))},"",MIN(${ratings.join(',')}))`;
}

/** Hose, fittings and ferrules; blank where a mass is missing. */
function mass(coupled: CoupledExpressions, cut: string): string {
  const [perLength, ...fittings] = [coupled.ofHose('massPerLength'), ...coupled.ofFittings('mass')];
  const ratio = coupled.ratio('massPerLength');
  if (!ratio || !perLength || fittings.includes(undefined)) return '""';
  const ferrules = coupled.ends.flatMap(end => coupled.ofFerrule(end, 'mass') ?? []);
  const sum = [`${cut}*${perLength}/${ratio}`, ...fittings, ...ferrules].join('+');
  return `IF(${anyOf([perLength, ...fittings].map(each => `${each}=""`))},"",IFERROR(${sum},""))`;
}

/** What can be wrong, in the order of ASSEMBLY: how its sentence begins, and the words of a plain formula, which has no details. */
const FAULTS = [
  ['families differ:', 'families differ'],
  ['sizes differ:', 'sizes differ'],
  ['no crimp data for ', 'no crimp data: do not assemble'],
  ['rating missing:', 'rating missing'],
  ['too short:', 'too short'],
  ['outside diameter missing:', 'outside diameter missing'],
  ['insertion depth missing:', 'insertion depth missing'],
] as const;

/** ASSEMBLY's verdict without its details. */
export function shortVerdict(sentence: string): string {
  const found = FAULTS.filter(([begins]) => sentence.startsWith(begins) || sentence.includes(`; ${begins}`));
  return found.length > 0 ? found.map(([, words]) => words).join('; ') : sentence;
}

/** `OK`, or what is wrong without its details. */
function verdict(coupled: CoupledExpressions, cut: string): string {
  const { families, sizes, crimps } = coupled.faults();
  const ratings = coupled.ofFittings('workingPressure');
  const missing = ratings.includes(undefined) ? 'TRUE()' : anyOf(ratings.map(rating => `${rating}=""`));
  const { outside, depth } = coupled.unchecked();
  const said = (condition: string, words: string) => `IF(${condition},"; ${words}","")`;
  const unchecked = [
    ...(outside ? [said(outside, 'outside diameter missing')] : []),
    ...(depth ? [said(depth, 'insertion depth missing')] : []),
  ];
  const texts = [
    said(families, 'families differ'),
    said(sizes, 'sizes differ'),
    said(crimps, 'no crimp data: do not assemble'),
    said(missing, 'rating missing'),
    `IF(${coupled.tooShort(cut)},"; too short",${unchecked.length > 0 ? unchecked.join('&') : '""'})`,
  ];
  // "; too short; OK" loses its OK, "; OK" only what stands before it.
  return `SUBSTITUTE(MID(${[...texts, '"; OK"'].join('&')},3,200),"; OK","")`;
}

export const assembly: NativeFunction = {
  arguments: ['catalogue', 'name', 'name', 'name', 'number', 'plainNumber', 'name'],
  width: 4,
  shown: (text, column) => (column === 3 ? shortVerdict(text) : text),
  row(call, context) {
    const coupled = new CoupledExpressions(call, context);
    const use = refusedUse(call);
    const refused = [...coupled.refused(), ...(use instanceof NotNative ? refusedOptional(call[5]) : use)];
    const first = context.cell?.(0);
    const cutCell = first ?? coupled.cut;
    const whole = (result: string) => rowFormula(coupled.isBlank, refused, `IF(${coupled.cut}<=0,NA(),${result})`);
    const beside = (result: string) => {
      if (!first) return whole(result);
      return `IF(ISERROR(${first}),NA(),IF(${first}="","",${result}))`;
    };
    const inUse = (result: string) => (use instanceof NotNative ? use : beside(result));
    return [whole(coupled.cut), inUse(pressure(coupled)), beside(mass(coupled, cutCell)), inUse(verdict(coupled, cutCell))];
  },
};
