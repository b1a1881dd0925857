import { columnLetters, sheetInFormula } from '../../workbook/a1';
import { roleOfEnd, type EndLetter } from './columnRoles';
import { judgedBy, judgedEnds } from './judgedBy';
import { setUpOf } from './setUp';
import { MACHINE_FIELDS, type DialField, type MachineRow, type MachineRows } from '../catalogue/machineRows';
import { call, type OfferContext, type FormulaPlace, type Recipe } from './offer';

const LIMITS: readonly DialField[] = ['lowest', 'highest', 'largestMove'];
const WORDS: Readonly<Record<DialField, string>> = {
  step: 'step',
  lowest: 'lowest',
  highest: 'highest',
  largestMove: 'largest move',
};

/** What the table Machines gives a formula: a reference a field, "" where it states none; or why it cannot. */
type FromMachines =
  | { readonly of: (field: DialField, place: FormulaPlace) => string; readonly states: readonly DialField[] }
  | { readonly reason: string };

const absolute = (sheet: string, column: number, first: number, last = first) => {
  const cell = (row: number) => `$${columnLetters(column)}$${row + 1}`;
  return `${sheetInFormula(sheet)}!${first === last ? cell(first) : `${cell(first)}:${cell(last)}`}`;
};

/** The cells of one machine's row. */
function ofOneMachine({ sheet, columns }: MachineRows, { row, states }: MachineRow): FromMachines {
  return {
    states: MACHINE_FIELDS.filter(field => states.has(field)),
    of: field => (states.has(field) ? absolute(sheet, columns[field]!, row) : ''),
  };
}

/** Looked up by the name in the row: people append rows, and sort them. Every machine's own row must then come first under its name. */
function byName({ sheet, columns, body, machines }: MachineRows, spill: boolean | undefined): FromMachines {
  if (spill)
    return {
      reason:
        'One formula for all rows takes the limits of one machine: choose it under “Machine and price”, or one formula a row under Settings.',
    };
  const stated = MACHINE_FIELDS.filter(field => machines.some(({ states }) => states.has(field)));
  const incomplete = stated.find(field => machines.some(({ states }) => !states.has(field)));
  if (incomplete)
    return {
      reason: `Not every machine states its ${WORDS[incomplete]} in the table Machines: choose one machine under “Machine and price”.`,
    };
  const later = machines.find(({ isFirst }) => !isFirst);
  if (later)
    return {
      reason: `In the table Machines another row comes before the one that describes ${later.name}: choose one machine under “Machine and price”.`,
    };
  const rows = (column: number) => absolute(sheet, column, body.row, body.row + body.rows - 1);
  return {
    states: stated,
    of: (field, { at }) =>
      stated.includes(field) ? `INDEX(${rows(columns[field]!)},MATCH(${at('crimper')},${rows(columns.machine!)},0))` : '',
  };
}

function fromMachines({ columns, catalogue, options }: OfferContext): FromMachines | undefined {
  const { machines } = catalogue;
  if (!machines) return undefined;
  const one = machines.machines.find(({ name }) => name === options.machine);
  if (one) return ofOneMachine(machines, one);
  return columns.crimper ? byName(machines, options.spill) : undefined;
}

/** Dial of the next crimp, with the limits of the machine's dial where the table Machines states them. */
function nextDialOf(context: OfferContext, end: EndLetter, letter: string): Recipe {
  const { columns, catalogue } = context;
  const by = judgedBy(context, end);
  const { needs, alsoTakes, restsOn, catalogue: looksUp } = by;
  const found = fromMachines(context);
  const machine = found && 'of' in found ? found : undefined;
  const coupling = by.couplingEnd;
  const dial = roleOfEnd('dial', end);
  const canLookUp = catalogue.present && !!columns.hose && !!columns[`fitting${coupling}`];
  const dialHere = !!columns[dial] || !canLookUp;
  const stepHere = !!columns.step;
  const hindrance = () => {
    if (by.hindrance) return by.hindrance;
    if (found && 'reason' in found) return stepHere ? undefined : found.reason;
    if (stepHere || machine) return undefined;
    return catalogue.machines
      ? 'Needs the step: a column of the table, or choose the machine under “Machine and price”.'
      : undefined;
  };
  const machineUnit = catalogue.machines?.stepUnit;
  const otherUnit = !stepHere && machine && looksUp && machineUnit !== catalogue.diameterUnit;
  const from = (field: DialField, place: FormulaPlace) => machine?.of(field, place) ?? '';
  return {
    id: `nextDial${letter}`,
    heading: letter === '' ? 'Next dial' : `Next dial ${letter}`,
    crimp: true,
    catalogue: looksUp || !dialHere,
    restsOn: [...(dialHere ? [] : [`dial${coupling}`]), ...restsOn],
    ...((looksUp || (!stepHere && machine)) && { unitMatters: 'diameter' as const }),
    needs: [...(dialHere ? [dial] : []), ...needs, ...(stepHere || !catalogue.machines ? (['step'] as const) : [])],
    alsoTakes: [
      ...alsoTakes,
      ...(dialHere ? [] : ['Dial of the catalogue']),
      ...(machine
        ? [
            `${machine.states
              .filter(field => field !== 'step' || !stepHere)
              .map(field => WORDS[field])
              .join(', ')} of the machine`,
          ]
        : []),
    ],
    hindrance: otherUnit
      ? `Step in the table Machines is in ${machineUnit}, crimp diameters are in ${catalogue.diameterUnit}.`
      : hindrance(),
    call: place =>
      call('NEXTDIAL', [
        dialHere ? place.at(dial) : setUpOf(context, coupling, 'dial', place),
        by.readings(place),
        by.target(place),
        by.tolerance(place),
        stepHere ? place.at('step') : from('step', place),
        ...LIMITS.map(field => from(field, place)),
      ]),
  };
}

/** Dial of the next crimp: of each end where both ends lie in a row. */
export const nextDialRecipes = (context: OfferContext): readonly Recipe[] =>
  judgedEnds(context).map(([end, letter]) => nextDialOf(context, end, letter));

/** The machine's limits that next dial is written without: all of them where no machine is known. */
export function limitsLeftOut(context: OfferContext): readonly string[] {
  const found = fromMachines(context);
  const stated = found && 'of' in found ? found.states : [];
  return LIMITS.filter(field => !stated.includes(field)).map(field => WORDS[field]);
}
