import type { CopiedSheet, CopiedWorkbook } from '../../workbook/copiedWorkbook';
import { callsOurs } from '../../workbook/functionCall';
import { freeSheetName } from '../print/freeSheetName';
import { CellSet, type WorkbookCell } from './workbookCell';
import { copiedSheet } from './copiedSheet';
import { hiddenSentences, isHiddenSheet, leftOutOfCopy } from './copyReport';
import { eachFilledCell, type CopySource } from './copySource';
import type { CopyWishes } from './copyWishes';
import { plainFormulas } from './plainFormulas';
import { privateCells } from './privateCells';
import { readFirstSheet, type KeptCells } from './readFirst';
import { cellAddress } from '../../workbook/a1';

/** A copy, and what the person who passes it on should know. */
export interface PlannedCopy {
  readonly copy: CopiedWorkbook;
  /** Formulas in the copy. */
  readonly formulas: number;
  /** Cells that held a formula and hold its value, in a copy with formulas. */
  readonly kept: readonly KeptCells[];
  /** What was left out, a sentence each. */
  readonly leftOut: readonly string[];
  /** What is hidden in the workbook and came with the copy, in a sentence. */
  readonly hidden: readonly string[];
}

/** Nothing to copy: the sentence says what to do. */
export class NothingToCopy extends Error {}

const SHORTENED = 24;

function namesInCopy(source: CopySource, chosen: readonly string[], { target, today }: CopyWishes): ReadonlyMap<string, string> {
  const taken = [...(target === 'sheets' ? source.names : [])];
  return new Map(
    chosen.map(name => {
      const inCopy = target === 'sheets' ? freeSheetName(`${name.slice(0, SHORTENED)} copy`, taken, today) : name;
      taken.push(inCopy);
      return [name, inCopy];
    }),
  );
}

const NONE_TICKED = 'Tick a sheet that holds something.';
const ONLY_HIDDEN = 'New sheets would show what is hidden: tick a sheet that is not, or download the copy.';

/**
 * The sheets that are copied: those that were chosen and hold something, those of the catalogue only where they are wanted, hidden ones
 * for a customer only where they stay hidden.
 */
function sheetsToCopy(source: CopySource, { sheets, withParts, kind, target }: CopyWishes): string[] {
  const ticked = source.names.filter(
    name => sheets.includes(name) && source.sheets.has(name) && (withParts || !source.parts.get(name)?.isInUse),
  );
  const wouldShow = (name: string) => kind === 'values' && target === 'sheets' && isHiddenSheet(source, name);
  const chosen = ticked.filter(name => !wouldShow(name));
  if (chosen.length === 0) throw new NothingToCopy(ticked.length > 0 ? ONLY_HIDDEN : NONE_TICKED);
  return chosen;
}

/** What cells show whose functions have not answered: no result to copy. */
const UNANSWERED = new Set(['#NAME?', '#BUSY!', '#GETTING_DATA', '#CONNECT!']);

/** Results stand beside the formulas of a copy, and alone in one of values: they must be there. */
function requireAnswers(source: CopySource, chosen: readonly string[]): void {
  for (const name of chosen) {
    const sheet = source.sheets.get(name)!;
    for (const place of eachFilledCell(sheet)) {
      const value = sheet.cells.value(place.row, place.column);
      if (typeof value !== 'object' || !UNANSWERED.has(value.error)) continue;
      if (!callsOurs(sheet.cells.formula(place.row, place.column))) continue;
      throw new NothingToCopy(
        `${name}!${cellAddress(place)} shows ${value.error}: wait until it is calculated, or press “Enter formulas again”, then copy.`,
      );
    }
  }
}

/**
 * Plans a copy of the workbook that needs no add-in.
 * @throws NothingToCopy where none of the sheets can be copied, or a function of ours has not answered yet
 */
export function planCopy(source: CopySource, wishes: CopyWishes): PlannedCopy {
  const chosen = sheetsToCopy(source, wishes);
  requireAnswers(source, chosen);
  const names = namesInCopy(source, chosen, wishes);
  const leftOut = wishes.withCosts ? new CellSet() : privateCells(source);
  const withoutHidden = wishes.kind === 'values';
  const plain = wishes.kind === 'formulas' ? plainFormulas(source, { names, leftOut }) : undefined;
  const sheets: CopiedSheet[] = chosen.map(name => {
    const rules = { leftOut, withoutHidden, ...(plain && { cell: (place: WorkbookCell) => plain.cell(place) }) };
    const sheet = copiedSheet(names.get(name)!, source.sheets.get(name)!, rules);
    return plain?.finished(name, sheet) ?? sheet;
  });
  const kept = plain?.kept ?? [];
  const taken = [...names.values(), ...(wishes.target === 'sheets' ? source.names : [])];
  const first = readFirstSheet(freeSheetName('Read first', taken, wishes.today), wishes, kept);
  const copy = { title: `Copy without Benchrow, ${wishes.today}`, sheets: [first, ...sheets] };
  const formulas = sheets.flatMap(({ cells }) => cells.flat()).filter(({ formula }) => formula !== undefined).length;
  const message = leftOutOfCopy(source, chosen, { cells: leftOut, withoutHidden });
  return { copy, formulas, kept, leftOut: message, hidden: hiddenSentences(source, chosen, wishes) };
}
