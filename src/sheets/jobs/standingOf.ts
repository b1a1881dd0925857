import type { Standing } from './jobLine';
import { jobStatus } from './jobStatus';
import { type LineReading, JobLineReader } from './jobLineReader';

/** An error value that only repeats what another reason says of the cell it comes from. */
function isEcho(reason: string, all: readonly string[]): boolean {
  if (!/\bis #/.test(reason)) return false;
  return all.some(other => other !== reason && !/\bis #/.test(other) && reason.includes(other.split(': ')[0]!));
}

export function standingOf(line: JobLineReader, reasons: readonly string[], reading: LineReading): Standing {
  const status = line.reader.has('status') ? jobStatus(line.reader.cell(line.row, 'status')) : 'open';
  const text = line.name('status');
  if (status === 'done' && !reading.takesDone) return { kind: 'done', status: text };
  const all = [...(status === 'held' ? [`its status says ${text}`] : []), ...reasons];
  const once = [...new Set(all)].filter((reason, _, every) => !isEcho(reason, every));
  if (status === 'planned' && !reading.takesPlanned) return { kind: 'planned', reasons: once };
  return once.length > 0 ? { kind: 'stop', reasons: once } : { kind: 'ready', partsChecked: reading.catalogue !== undefined };
}
