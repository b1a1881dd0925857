import { hasDerating } from '../../core/catalogue/pressureAt';
import { partKey } from '../../core/catalogue/partName';
import { Decimal } from '../../core/units/decimal';
import type { Length } from '../../core/units/lengthUnit';
import { nameOfCell } from '../../cells/sheetCell';
import type { TableReader } from '../table/tableReader';
import type { JobLine, JobPlace } from './jobLine';
import { isOverallByName, type JobRole } from './jobRoles';
import { judgeLengths, judgeParts, type CatalogueVerdict, type LineFacts } from './jobStanding';
import { type LineReading, JobLineReader } from './jobLineReader';
import { ratedLine } from './ratedLine';
import { sheetEnd } from './sheetEnd';
import { standingOf } from './standingOf';

const PLACES: readonly JobPlace[] = [
  'hose',
  'fittingA',
  'fittingB',
  'overall',
  'cutLength',
  'quantity',
  'guard',
  'label',
  'line',
  'temperature',
  'fluid',
];

/** What the row's own check of the assembly objects to. */
function objection({ reader, row }: JobLineReader): string | undefined {
  const cell = reader.cell(row, 'check');
  if (typeof cell === 'object') return `its check is ${cell.error}${cell.sentence ? ` (${cell.sentence})` : ''}`;
  const text = nameOfCell(cell);
  return text === '' || /^(?:ok|yes|true|checked|passed)\b/i.test(text) ? undefined : `its check says: ${text}`;
}

function limitsOf(line: JobLineReader): JobLine['limits'] {
  const [shortest, longest] = [line.may('shortestLength'), line.may('longestLength')];
  return shortest && longest ? { shortest, longest } : undefined;
}

/** What is asked where a line names a single coupling. */
export const ONE_COUPLING = 'only one coupling is named: name the other, or say that the other end stays plain hose';

const PRICED_BY_HAND = 'one coupling only: price it by hand';

/** Lengths of a line: what to cut is the sheet's, or the length of a hose without couplings. */
function lengthsOf(line: JobLineReader, fittings: readonly [string, string]) {
  const overall = line.must('overall');
  const stated = line.must('cutLength');
  if (stated || !overall || line.reader.has('cutLength') || fittings.some(name => name !== ''))
    return { overall, cutLength: stated };
  const hasCouplings = line.reader.has('fittingA') || line.reader.has('fittingB');
  // `Overall length` speaks of couplings; where the sheet names none, somebody has to say which length it is.
  if (!hasCouplings && isOverallByName(line.reader.heading('overall'))) {
    line.reasons.push(`no couplings are named: say whether ${line.reader.heading('overall')} is the length to cut`);
    return { overall, cutLength: undefined };
  }
  return { overall, cutLength: overall };
}

/** Bore of the catalogue's hose, for a sheet that states none. */
function boreOf(hose: string, { catalogue }: LineReading): Length | undefined {
  const row = catalogue?.index.hoses.get(partKey(hose))?.row;
  return row && catalogue && { value: new Decimal(row.bore), unit: catalogue.units.length };
}

/** One row of a job table as a line. */
export function readJobLine(reader: TableReader<JobRole>, row: number, reading: LineReading): JobLine {
  const line = new JobLineReader(reader, row);
  for (const { refusal } of reader.questions) if (refusal !== undefined) line.reasons.push(refusal);
  const group = reading.groupOf?.(row);
  const hose = group?.hose ?? line.part('hose', 'hose');
  if (group?.refusal !== undefined) line.reasons.push(group.refusal);
  if (hose === '' && line.reasons.length === 0) line.reasons.push('hose is blank: fill it in');
  const ends = [sheetEnd(line, 'A'), sheetEnd(line, 'B')] as const;
  const fittings = [ends[0].fitting, ends[1].fitting] as const;
  const { overall, cutLength } = lengthsOf(line, fittings);
  if (!cutLength && line.reasons.length === 0 && (reader.has('cutLength') || !overall))
    line.reasons.push(`${reader.has('cutLength') ? 'cut' : 'overall'} length is blank: fill it in`);
  const quantity = line.quantity();
  const temperature = line.must('temperature', 'any');
  const facts: LineFacts = {
    hose,
    fittings,
    overall,
    cutLength,
    allowance: line.must('allowance', 'any'),
    cutOffs: [line.must('cutOffA', 'any'), line.must('cutOffB', 'any')],
    bore: line.may('bore'),
    temperature,
    fluid: line.name('fluid'),
    namesCouplings: reader.has('fittingA') || reader.has('fittingB'),
  };
  const isOneCoupling = (fittings[0] === '') !== (fittings[1] === '');
  const isError = typeof reader.cell(row, 'fittingA') === 'object' || typeof reader.cell(row, 'fittingB') === 'object';
  if (isOneCoupling && !isError && !reading.plainEnds) line.reasons.push(ONE_COUPLING);
  else if (isOneCoupling && !isError && reading.isPriced) line.reasons.push(PRICED_BY_HAND);
  const judged: CatalogueVerdict = hose === '' ? { reasons: [], assembly: undefined } : judgeParts(reading.catalogue, facts);
  const lengths = judgeLengths(reading.catalogue, facts, reading.step);
  const check = objection(line);
  const isDerated = reading.catalogue !== undefined && hasDerating(reading.catalogue, { hose });
  const pressure = ratedLine(line, judged, reading);
  const number = `row ${row + 1}`;
  const reasons = [...line.reasons, ...judged.reasons, ...lengths, ...(check && judged.reasons.length === 0 ? [check] : [])];
  return {
    sheet: reader.table.sheet,
    row: row + 1,
    line: line.name('line') || number,
    label: line.name('label'),
    order: line.name('order'),
    assembly: line.name('assembly'),
    due: line.name('due'),
    status: line.name('status'),
    hose,
    ends,
    quantity,
    overall,
    cutLength,
    limits: limitsOf(line),
    bore: facts.bore ?? boreOf(hose, reading),
    twist: line.number('twist', 'twist angle'),
    pressure,
    temperature,
    hasDerating: isDerated,
    fluid: facts.fluid,
    guard: line.name('guard'),
    note: line.name('note'),
    crimper: line.name('crimper'),
    customer: line.name('customer'),
    standing: standingOf(line, reasons, reading),
    notes: line.notes,
    places: {
      ...(group?.place !== undefined && { hose: group.place }),
      ...Object.fromEntries(
        PLACES.flatMap(role => (reader.has(role) && reader.name(row, role) !== '' ? [[role, reader.place(row, role)!]] : [])),
      ),
    },
  };
}
