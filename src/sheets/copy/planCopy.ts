import type { CopiedSheet, CopiedWorkbook } from '../../workbook/copiedWorkbook';
import { callsOurs } from '../../workbook/functionCall';
import { freeSheetName } from '../print/freeSheetName';
import { CellSet, type WorkbookCell } from './workbookCell';
import { copiedSheet } from './copiedSheet';
import { eachFilledCell, partsSheets, type CopySource } from './copySource';
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

const MOST_NAMED = 12;

/** Left-out cells, as their headings and labels name them. */
function privateSentence(source: CopySource, chosen: readonly string[], cells: CellSet): string[] {
  const words = new Map<string, string>();
  for (const place of cells.all()) {
    if (!chosen.includes(place.sheet)) continue;
    const sheet = source.sheets.get(place.sheet)!.cells;
    const value = sheet.value(place.row, place.column);
    const column = `${place.sheet} ${place.column}`;
    if (typeof value === 'string' && value !== '' && !sheet.isComputed(place.row, place.column) && !words.has(column)) {
      words.set(column, `${place.sheet}!${cellAddress(place)} (${value})`);
    }
  }
  if (words.size === 0) return [];
  const named = [...words.values()];
  const more = named.length > MOST_NAMED ? `, and ${named.length - MOST_NAMED} more` : '';
  return [`Costs and margins: ${named.slice(0, MOST_NAMED).join(', ')}${more}. Look the copy through before you pass it on.`];
}

function hiddenSentence(source: CopySource, chosen: readonly string[]): string[] {
  const hidden = chosen.flatMap(name => {
    const rows = source.sheets.get(name)?.cells.layout.hiddenRows.size ?? 0;
    return rows > 0 ? [`${name} (${rows})`] : [];
  });
  return hidden.length > 0 ? [`Contents of hidden rows: ${hidden.join(', ')}.`] : [];
}

/** The sheets that are copied: those that were chosen and hold something, those of the catalogue only where they are wanted. */
function sheetsToCopy(source: CopySource, { sheets, withParts }: Pick<CopyWishes, 'sheets' | 'withParts'>): string[] {
  const parts = withParts ? new Set<string>() : partsSheets(source);
  return source.names.filter(name => sheets.includes(name) && source.sheets.has(name) && !parts.has(name));
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
  if (chosen.length === 0) throw new NothingToCopy('Tick a sheet that holds something.');
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
  const message = [
    ...(wishes.withCosts ? [] : privateSentence(source, chosen, leftOut)),
    ...(withoutHidden ? hiddenSentence(source, chosen) : []),
  ];
  return { copy, formulas, kept, leftOut: message };
}
