import { isDieChange, isMachineChange, type Cause } from './cause';
import { MOST_MACHINE_CHANGES } from './causeRule';

const isUntilStep = ({ kind }: Cause) => kind === 'machine until';
const isWholeMachine = ({ kind }: Cause) => kind === 'machine';

/** Step 5: whether a cause may join others, none of which it is itself. */
export function mayJoin(cause: Cause, others: readonly Cause[], dies: number): boolean {
  if (isMachineChange(cause) && others.filter(isMachineChange).length >= MOST_MACHINE_CHANGES) return false;
  if (cause.kind === 'die' && others.filter(({ kind }) => kind === 'die').length >= dies - 1) return false;
  if (isDieChange(cause)) return !others.some(other => isDieChange(other) && other.of === cause.of);
  if (isUntilStep(cause)) return !others.some(other => isUntilStep(other) || isWholeMachine(other));
  return !(isWholeMachine(cause) && others.some(isUntilStep));
}
