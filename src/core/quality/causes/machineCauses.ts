import type { Cause, MachineKind } from './cause';
import type { TimeStretches } from './timeStretches';

/** Crimps on either side of a step, and under a ramp. */
export const BESIDE_STEP = 2;
export const UNDER_RAMP = 4;
/** Boundaries that a ramp needs, the one where it begins included. */
const WITHIN_RAMP = 2;

/** A machine that is off since the first crimp: for all crimps alike. */
export function wholeMachine({ boundaries }: TimeStretches): Cause {
  return { kind: 'machine', of: -1, line: { from: 0, to: boundaries.length + 1, start: 0, rise: 0 } };
}

function steps({ boundaries, elapsed }: TimeStretches): Cause[] {
  const stretches = boundaries.length + 1;
  return boundaries.flatMap((boundary, index): Cause[] => {
    if (boundary < BESIDE_STEP || elapsed.length - boundary < BESIDE_STEP) return [];
    const step = (kind: MachineKind, from: number, to: number): Cause => {
      return { kind, of: -1, boundary, line: { from, to, start: 0, rise: 0 } };
    };
    return [step('machine since', index + 1, stretches), step('machine until', 0, index + 1)];
  });
}

function rampsSince({ boundaries, elapsed }: TimeStretches): Cause[] {
  const crimps = elapsed.length;
  const end = elapsed[crimps - 1]!;
  return [0, ...boundaries].flatMap((boundary, from): Cause[] => {
    const start = elapsed[boundary]!;
    const within = boundary === 0 ? boundaries.length : boundaries.length - from + 1;
    if (within < WITHIN_RAMP || crimps - boundary < UNDER_RAMP || start >= end) return [];
    const line = { from, to: boundaries.length + 1, start, rise: 1 / (end - start) };
    return [{ kind: 'machine rising', of: -1, boundary, line }];
  });
}

function rampsUntil({ boundaries, elapsed }: TimeStretches): Cause[] {
  return boundaries.flatMap((boundary, index): Cause[] => {
    if (index < WITHIN_RAMP || boundary < UNDER_RAMP || elapsed.length - boundary < BESIDE_STEP) return [];
    const line = { from: 0, to: index + 1, start: 0, rise: 1 / elapsed[boundary - 1]! };
    return [{ kind: 'machine rising until', of: -1, boundary, line }];
  });
}

/** What may have changed the machine: steps and ramps at the boundaries between dates. */
export function machineChanges(time: TimeStretches): Cause[] {
  return time.boundaries.length === 0 ? [] : [...steps(time), ...rampsSince(time), ...rampsUntil(time)];
}
