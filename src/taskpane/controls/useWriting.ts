import { useState } from 'react';
import { blockOf, addressOf } from '../../workbook/a1';
import type { Writing } from '../../sheets/print/writing';
import type { CellValue, Change, Workbook } from '../../workbook/workbook';

/** What came of it. */
export type WritingOutcome =
  | { readonly kind: 'none' }
  | { readonly kind: 'busy' }
  | { readonly kind: 'written'; readonly writing: Writing }
  | { readonly kind: 'undone'; readonly told: string }
  | { readonly kind: 'refused'; readonly sentence: string };

const sentence = (error: unknown) => (error instanceof Error ? error.message : String(error));

const wordsOf = (cell: CellValue) => (typeof cell === 'object' ? cell.error : String(cell));

/** The first cell that no longer holds what was written to it; undefined where all do. */
async function changedSince(workbook: Workbook, changes: readonly Change[]): Promise<string | undefined> {
  for (const change of changes) {
    if (change.kind !== 'values') continue;
    const block = blockOf(change.at.address)!;
    const cells = change.values.flatMap((row, r) =>
      row.map((value, c) => ({
        value,
        address: addressOf({ row: block.row + r, column: block.column + c, rows: 1, columns: 1 }),
      })),
    );
    const now = await workbook.read(cells.map(({ address }) => ({ sheet: change.at.sheet, address })));
    const other = cells.find(({ value }, index) => wordsOf(now[index]!.values[0]![0]!) !== String(value));
    if (other) return `${change.at.sheet}!${other.address}`;
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
      await workbook.write(writing.changes);
      setOutcome({ kind: 'written', writing });
      onWritten();
    } catch (error) {
      setOutcome({ kind: 'refused', sentence: sentence(error) });
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
      setOutcome({ kind: 'undone', told: 'Taken back.' });
      onWritten();
    } catch (error) {
      setOutcome({ kind: 'refused', sentence: `Not taken back: ${sentence(error)}` });
    }
  };
  return { outcome, write, undo };
}
