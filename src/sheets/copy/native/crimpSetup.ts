import { blankKey, rowFormula } from './conditions';
import { given, type NativeArgument, type NativeArguments, type NativeContext, type NativeFunction } from './nativeFunction';
import { NotNative } from '../notNative';
import { orBlank, partsOf, requireShort, trimmed } from './partNames';

/** Dial and whose it is. */
interface Dial {
  readonly dial: string;
  readonly source: string;
}

/** A part of a result that alone cannot be said. */
function orReason(work: () => string): string | NotNative {
  try {
    return work();
  } catch (error) {
    if (error instanceof NotNative) return error;
    throw error;
  }
}

const ofCatalogue = (dial: string): Dial => ({ dial, source: '"CATALOGUE"' });

/** The machine's own recorded dial before the catalogue's, which counts only for machines that it was made for. */
function dialOf(context: NativeContext, call: NativeArguments, die: string, catalogueDial: string): Dial {
  const [hose, fitting, machine] = [given(call, 1), given(call, 2), call[3]];
  if (!machine) return ofCatalogue(catalogueDial);
  const machines = partsOf(context).machines();
  const none = `${machine.text}=""`;
  if (!machines) return { dial: `IF(${none},${catalogueDial},NA())`, source: `IF(${none},"CATALOGUE",NA())` };
  const name = trimmed(machine);
  const record = machines.record(name, die, trimmed(hose), trimmed(fitting));
  const holds = `${machines.dialsHold(name)}="yes"`;
  const choose = (own: string, catalogue: string, nothing: string) =>
    `IF(${none},${catalogue},IF(${machines.unknown(name)},NA(),IF(ISNA(${record}),IF(${holds},${catalogue},${nothing}),${own})))`;
  return { dial: choose(machines.dialAt(record), catalogueDial, '""'), source: choose('"MACHINE"', '"CATALOGUE"', '"NO DIAL"') };
}

function depthOf(context: NativeContext, crimpRow: string, fitting: NativeArgument): string {
  const parts = partsOf(context);
  const row = parts.fittingRow(trimmed(fitting));
  const ofFitting = parts.field('fittings', 'insertionDepth', row);
  const ofCrimp = parts.field('crimps', 'insertionDepth', crimpRow);
  // A pair may have crimp data without being in the table of fittings.
  const fallback = ofFitting ? `IF(ISNA(${row}),"",${orBlank(ofFitting)})` : '""';
  return ofCrimp ? `IF(${ofCrimp}="",${fallback},${ofCrimp})` : fallback;
}

function refusals(context: NativeContext, call: NativeArguments, crimpRow: string): string[] {
  const [hose, fitting, machine] = [given(call, 1), given(call, 2), call[3]];
  const parts = partsOf(context);
  const machines = machine && parts.machines();
  const names = [hose, fitting, ...(machine ? [machine] : [])];
  requireShort(...names);
  const isUnknown = machines ? machines.unknown(trimmed(machine)) : 'TRUE()';
  return [
    `${fitting.text}=""`,
    ...parts.refusedNames(names.map(trimmed)),
    ...(machine ? [`IF(${machine.text}="",FALSE(),${isUnknown})`] : []),
    `ISNA(${crimpRow})`,
  ];
}

export const crimpSetup: NativeFunction = {
  arguments: ['catalogue', 'name', 'name', 'name'],
  width: 6,
  row(call, context) {
    const parts = partsOf(context);
    const [hose, fitting] = [given(call, 1), given(call, 2)];
    const row = parts.crimpRow(trimmed(hose), trimmed(fitting));
    const refused = refusals(context, call, row);
    const field = (name: string) => parts.needed('crimps', name, row);
    const die = field('die');
    const columns: (() => string)[] = [
      () => die,
      () => dialOf(context, call, die, field('dial')).dial,
      () => field('crimpDiameter'),
      () => field('tolerance'),
      () => depthOf(context, row, fitting),
      () => dialOf(context, call, die, field('dial')).source,
    ];
    const first = context.cell?.(0);
    return columns.map((column, index) =>
      orReason(() => {
        if (index === 0 || !first) return rowFormula(blankKey(hose), refused, column());
        return `IF(ISERROR(${first}),NA(),IF(${first}="","",${column()}))`;
      }),
    );
  },
};
