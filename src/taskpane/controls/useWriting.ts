import { useState } from 'react';
import { blockOf, cellAddress } from '../../workbook/a1';
import type { Writing } from '../../sheets/print/writing';
import type { Change, Workbook } from '../../workbook/workbook';
import { cellWords } from '../../workbook/cellWords';
import { errorSentence } from '../../workbook/errorSentence';

/** What came of it. */
export type WritingOutcome =
  | { readonly kind: 'none' }
  | { readonly kind: 'busy' }
  | { readonly kind: 'written'; readonly writing: Writing }
  | { readonly kind: 'undone'; readonly message: string }
  | { readonly kind: 'refused'; readonly sentence: string };

/** Cells that got a formula after their value. */
function formulaCells(changes: readonly Change[]): ReadonlySet<string> {
  return new Set(
    changes.flatMap(change => {
      if (change.kind !== 'formulas') return [];
      const { row, column } = blockOf(change.at.address)!;
      return change.formulas.flatMap((cells, r) =>
        cells.flatMap((formula, c) => (formula === '' ? [] : [`${change.at.sheet} ${row + r} ${column + c}`])),
      );
    }),
  );
}

/** The first cell that no longer holds what was written to it; undefined where all do. */
async function changedSince(workbook: Workbook, changes: readonly Change[]): Promise<string | undefined> {
  const values = changes.flatMap(change => (change.kind === 'values' ? [change] : []));
  const calculated = formulaCells(changes);
  const now = await workbook.read(values.map(({ at }) => at));
  for (const [index, { at, values: written }] of values.entries()) {
    const block = blockOf(at.address)!;
    for (const [r, cells] of written.entries()) {
      for (const [c, value] of cells.entries()) {
        const [row, column] = [block.row + r, block.column + c];
        // What is read ends with the used part of the sheet.
        const cell = now[index]!.values[row - now[index]!.row]?.[column - now[index]!.column] ?? '';
        if (calculated.has(`${at.sheet} ${row} ${column}`) || cellWords(cell) === String(value)) continue;
        return `${at.sheet}!${cellAddress({ row, column })}`;
      }
    }
  }
  return undefined;
}

/** Writes to the workbook and takes it back, one thing at a time. */
export function useWriting(workbook: Workbook, onWritten: () => void = () => {}) {
  const [outcome, setOutcome] = useState<WritingOutcome>({ kind: 'none' });
  /** Plans, then writes; what the plan or the host refuses is said. */
  const write = async (plan: () => Promise<Writing> | Writing) => {
    setOutcome({ kind: 'busy' });
    try {
      const writing = await plan();
      // Somebody else may have typed into these cells since they were read.
      await workbook.write(writing.changes, writing.undo);
      setOutcome({ kind: 'written', writing });
      onWritten();
    } catch (error) {
      setOutcome({ kind: 'refused', sentence: errorSentence(error) });
    }
  };
  const undo = async () => {
    if (outcome.kind !== 'written') return;
    const { writing } = outcome;
    setOutcome({ kind: 'busy' });
    try {
      const changed = await changedSince(workbook, writing.changes);
      if (changed) throw new Error(`${changed} changed since it was written.`);
      await workbook.write(writing.undo);
      setOutcome({ kind: 'undone', message: 'Taken back.' });
      onWritten();
    } catch (error) {
      setOutcome({ kind: 'refused', sentence: `Not taken back: ${errorSentence(error)}` });
    }
  };
  return { outcome, write, undo };
}
