import type { Catalogue } from '../../core/catalogue/catalogue';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { numberFromText } from '../../core/units/numberText';
import { hostBlocks } from '../../workbook/hostTable';
import type { RangeContent, Workbook } from '../../workbook/workbook';
import { readSlots, type EntryDefaults } from '../crimps/readSlots';
import type { EntrySlot } from '../crimps/entrySlot';
import type { BenchCard } from '../jobs/benchCard';
import { gatherCards } from '../jobs/gatherCards';
import { jobChoice, NoJobs, type JobChoice } from '../jobs/readJobs';
import { catalogueOfWorkbook } from '../catalogue/catalogueOfWorkbook';
import { benchStep } from '../table/benchStep';
import { locateMeasurements } from '../crimps/locateMeasurements';
import { measurementUnit } from '../crimps/measurementUnit';
import { settingsAbove } from '../crimps/settingsAbove';
import { pickedRows } from '../table/pickedRows';
import type { InspectionRecord, Pressure, RecordFields } from './inspectionRecord';
import { ratedPressure } from './ratedPressure';
import { crimpsOfCard, crimpsOfSlots, dateText } from './recordCrimps';

/** What the user says about where things stand. */
export interface RecordWishes {
  readonly fields: RecordFields;
  /** Sheet with the half that the selected one lacks: job lines or readings; "" = none. */
  readonly otherSheet: string;
  readonly pressureUnit: string;
  /** What the bench can cut, as said with the cut list: records round as cards and cut lists do. */
  readonly bench: { readonly unit: LengthUnit; readonly step: string };
}

/** Records of the chosen lines. */
export interface GatheredRecords {
  readonly records: readonly InspectionRecord[];
  readonly handle: string;
  readonly source: string;
  /** Expanded uncertainty that the verdicts were made with: as the user says, else as stated above the readings; "" = none. */
  readonly uncertainty: string;
}

const key = (text: string) => text.trim().toLowerCase();

/** Lines of a sheet as cards, whatever their status; [] where it has no job table. */
async function cardsOf(workbook: Workbook, choice: JobChoice, wishes: RecordWishes): Promise<readonly BenchCard[]> {
  const { bench, fields, pressureUnit } = wishes;
  const { unit } = bench;
  const reading = { unit, step: benchStep(bench, unit), pressureUnit, machine: fields.machine, whateverStatus: true };
  try {
    return (await gatherCards(workbook, reading, choice)).cards;
  } catch (error) {
    if (error instanceof NoJobs) return [];
    throw error;
  }
}

/** All lines of a sheet. */
const wholeSheet = (sheet: string): JobChoice => ({ sheet, block: { row: 0, column: 0, rows: 1, columns: 1 }, isChoice: false });

/** Crimps of a sheet, and the uncertainty that stands above them. */
interface SheetCrimps {
  readonly slots: readonly EntrySlot[];
  readonly uncertainty: Decimal | undefined;
}

const NO_CRIMPS: SheetCrimps = { slots: [], uncertainty: undefined };

async function slotsOf(
  workbook: Workbook,
  content: RangeContent | undefined,
  row: number,
  rows: ReadonlySet<number> | undefined,
  catalogue: Catalogue | undefined,
  wishes: RecordWishes,
): Promise<SheetCrimps> {
  if (!content) return NO_CRIMPS;
  const hostTables = hostBlocks(await workbook.tables(content.sheet));
  const located = locateMeasurements(content, { row, column: content.column, rows: 1, columns: 1 }, hostTables);
  if (!located?.proposed.columns.readings) return NO_CRIMPS;
  const unit = measurementUnit(content, located.table, located.proposed.columns);
  const none = { tolerance: '', largestSpread: '', step: '', lowest: '', highest: '', largestMove: '' };
  const defaults: EntryDefaults = { ...none, machine: wishes.fields.machine };
  const slots = readSlots({ used: content, ...located, unit, defaults, catalogue, picked: rows });
  return { slots, uncertainty: settingsAbove(content, located.table, unit).uncertainty };
}

const firstOf = (slots: readonly EntrySlot[], pick: (slot: EntrySlot) => string) => slots.map(pick).find(Boolean) ?? '';

function allOf(slots: readonly EntrySlot[], pick: (slot: EntrySlot) => string): string {
  return [...new Set(slots.map(pick).filter(Boolean))].join(', ');
}

/** What all records of one gathering share. */
interface Ground {
  readonly catalogue: Catalogue | undefined;
  readonly uncertainty: Decimal | undefined;
}

function pressureOf(slots: readonly EntrySlot[], card: BenchCard | undefined, { catalogue }: Ground): Pressure | undefined {
  if (card?.workingPressure) return { value: card.workingPressure, unit: card.pressureUnit };
  return catalogue && ratedPressure(catalogue, slots);
}

function recordOf(slots: readonly EntrySlot[], card: BenchCard | undefined, ground: Ground): InspectionRecord {
  const line = slots[0]?.line ?? card?.line ?? '';
  const title = slots[0] ? (line ? `Line ${line}` : slots[0].title) : `Line ${line}`;
  return {
    title,
    line,
    label: card?.label ?? '',
    order: firstOf(slots, slot => slot.order) || (card?.order ?? ''),
    assembly: allOf(slots, slot => slot.assembly) || (card?.assembly ?? ''),
    quantity: card?.quantity ? String(card.quantity) : '',
    hose: firstOf(slots, slot => slot.hose) || (card?.hose ?? ''),
    hoseLot: allOf(slots, slot => slot.hoseLot),
    hoseMade: allOf(slots, slot => dateText(slot.hoseMade)),
    unit: slots[0]?.unit ?? card?.unit ?? 'mm',
    workingPressure: pressureOf(slots, card, ground),
    crimps: slots.length > 0 ? crimpsOfSlots(slots, ground.uncertainty) : card ? crimpsOfCard(card) : [],
    problems: card?.problems ?? [],
  };
}

/** Slots of one line together, in the order of the sheet; those without a line by their assembly, else each for itself. */
function byLine(slots: readonly EntrySlot[]): readonly (readonly EntrySlot[])[] {
  const groups = new Map<string, EntrySlot[]>();
  for (const slot of slots) {
    const name = slot.line ? `line ${key(slot.line)}` : slot.assembly ? `assembly ${key(slot.assembly)}` : `row ${slot.row}`;
    const group = groups.get(name);
    if (group) group.push(slot);
    else groups.set(name, [slot]);
  }
  return [...groups.values()];
}

function joined(
  slots: readonly EntrySlot[],
  cards: readonly BenchCard[],
  slotsLead: boolean,
  ground: Ground,
): readonly InspectionRecord[] {
  const cardFor = (group: readonly EntrySlot[]) =>
    cards.find(card => (group[0]!.line ? key(card.line) === key(group[0]!.line) : card.row === group[0]!.row));
  if (slotsLead) return byLine(slots).map(group => recordOf(group, cardFor(group), ground));
  const slotsFor = (card: BenchCard) => slots.filter(slot => slot.line !== '' && key(slot.line) === key(card.line));
  return cards.map(card => recordOf(slotsFor(card), card, ground));
}

/**
 * Reads the records of the selected lines: readings and job data from the selected table, and from another sheet what it lacks.
 * @throws Error with a sentence where nothing can be recorded
 */
export async function gatherRecords(workbook: Workbook, wishes: RecordWishes): Promise<GatheredRecords> {
  const picked = await pickedRows(workbook);
  const selection = await workbook.selection();
  const catalogue = await catalogueOfWorkbook(workbook);
  const other = wishes.otherSheet && wishes.otherSheet !== picked.sheet ? await workbook.used(wishes.otherSheet) : undefined;
  const here = await slotsOf(workbook, picked.content, selection.row, picked.rows, catalogue, wishes);
  const slotsLead = here.slots.length > 0;
  const crimps = slotsLead ? here : await slotsOf(workbook, other, other?.row ?? 0, undefined, catalogue, wishes);
  const choice = await jobChoice(workbook);
  const cardsHere = await cardsOf(workbook, slotsLead ? { ...choice, isChoice: false } : choice, wishes);
  const cards =
    cardsHere.length > 0 || !slotsLead || !other ? cardsHere : await cardsOf(workbook, wholeSheet(other.sheet), wishes);
  const uncertainty = numberFromText(wishes.fields.uncertainty)?.value ?? crimps.uncertainty;
  const records = joined(crimps.slots, cards, slotsLead, { catalogue, uncertainty });
  if (records.length === 0) {
    throw new Error(
      `Sheet ${picked.sheet} has no lines to record here. Select rows with readings, or job lines with a hose and a length.`,
    );
  }
  const source = [`sheet ${picked.sheet}`, other && `sheet ${other.sheet}`].filter(Boolean).join(', ');
  return { records, handle: catalogue?.handle ?? '', source, uncertainty: uncertainty?.toString() ?? '' };
}
