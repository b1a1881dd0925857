import type { SheetEnd } from './jobLine';
import type { JobEndField, JobRole } from './jobRoles';
import { JobLineReader } from './jobLineReader';
import { inUnit } from './inUnit';

export function sheetEnd(line: JobLineReader, end: 'A' | 'B'): SheetEnd {
  const role = (field: JobEndField): JobRole => (line.reader.has(`${field}${end}`) ? `${field}${end}` : field);
  const text = (field: JobEndField) => line.name(role(field));
  const small = (field: JobEndField, sign?: 'notNegative') => line.may(role(field), sign);
  const target = small('target');
  const tolerance = small('tolerance');
  const around = (sign: 1 | -1) =>
    target && tolerance && { value: target.value.plus(inUnit(tolerance, target.unit).times(sign)), unit: target.unit };
  const [smallest, largest] = [small('smallest') ?? around(-1), small('largest') ?? around(1)];
  const middle = smallest &&
    largest && { value: smallest.value.plus(inUnit(largest, smallest.unit)).div(2), unit: smallest.unit };
  return {
    fitting: line.part(end === 'A' ? 'fittingA' : 'fittingB', `fitting ${end}`),
    ferrule: text('ferrule'),
    die: text('die'),
    dial: text('dial'),
    target: target ?? middle,
    smallest,
    largest,
    crimpLength: small('crimpLength'),
    skiveOutside: small('skiveOutside', 'notNegative'),
    skiveInside: small('skiveInside', 'notNegative'),
    insertionDepth: small('insertionDepth'),
    angle: line.number(role('angle'), `angle ${end}`),
  };
}
