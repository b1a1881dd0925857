import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const text = (name: string) => readFileSync(join(__dirname, '../../cases/nist', name), 'utf8');

/** Numbers of the lines behind `Data: …`, one list a column. */
function columns(name: string): number[][] {
  const body = text(name)
    .split(/^Data:(?!.*Constructed|.*Factor|.*Real).*$/m)
    .at(-1)!;
  const lines = body.split('\n').map(line => line.trim().split(/\s+/));
  const rows = lines.filter(cells => cells.every(cell => /^-?\d+\.?\d*$/.test(cell))).map(cells => cells.map(Number));
  return rows[0]!.map((_, column) => rows.map(row => row[column]!));
}

/** Values and certified mean and standard deviation of a univariate data set. */
export function univariate(name: string) {
  const certified = (label: RegExp) => Number(label.exec(text(name))![1]);
  return {
    values: columns(name)[0]!,
    mean: certified(/^Sample Mean[^:]*:?.*?:\s*(-?[\d.]+)/m),
    standardDeviation: certified(/^Sample Standard Deviation.*?:\s*([\d.]+)/m),
  };
}

/** Groups and certified F of a one-way data set: one column a group, a first row of group numbers above them. */
export function oneWay(name: string) {
  const groups = columns(name).map(group => group.slice(1));
  return {
    groups,
    F: Number(/^Between Instrument.*\s(\S+)\s*$/m.exec(text(name).replace(/^Between Treatment/m, 'Between Instrument'))![1]),
  };
}
