import { FILLED, type FilledRole, type PieceTyped } from './fillPiece';

/** A piece's fields while somebody types into them. */
export interface PieceEdit {
  /** As the sheet had them when they were shown. */
  readonly shown: PieceTyped;
  /** What the fields began with: as shown, with the name of who works here. */
  readonly start: PieceTyped;
  readonly typed: PieceTyped;
}

const ROLES = [...FILLED, 'flushed', 'capped'] as const;

/** Fields as the sheet has them, with the name of who works here where nobody's stands. */
const startOf = (shown: PieceTyped, operator: string): PieceTyped => (shown.by === '' ? { ...shown, by: operator } : shown);

/** The fields of a piece that is shown for the first time. */
export function beginEdit(shown: PieceTyped, operator: string): PieceEdit {
  const start = startOf(shown, operator);
  return { shown, start, typed: start };
}

/** The fields once the sheet was read again: what nobody typed into shows what stands there now. */
export function editAgain({ start, typed }: PieceEdit, now: PieceTyped, operator: string): PieceEdit {
  const fresh = startOf(now, operator);
  const kept = ROLES.filter(role => typed[role] !== start[role]);
  return { shown: now, start: fresh, typed: { ...fresh, ...Object.fromEntries(kept.map(role => [role, typed[role]])) } };
}

/**
 * What is to be written where the sheet now holds `now`: only what was typed, and nothing over what somebody else has written meanwhile.
 * @param heading name of a field, for the sentence
 * @throws Error with a sentence where another value came into a field that was typed into
 */
export function typedNow(
  edit: PieceEdit,
  now: PieceTyped,
  heading: (role: FilledRole | 'flushed' | 'capped') => string,
): PieceTyped {
  const { shown, start, typed } = edit;
  const meanwhile = ROLES.find(role => typed[role] !== start[role] && now[role] !== shown[role] && now[role] !== typed[role]);
  if (meanwhile) {
    const value = now[meanwhile];
    const holds = typeof value === 'boolean' ? (value ? 'ticked' : 'not ticked') : value === '' ? 'blank' : `“${value}”`;
    throw new Error(`${heading(meanwhile)} was changed meanwhile: it is ${holds} now. Save again to replace it.`);
  }
  return editAgain(edit, now, start.by).typed;
}
