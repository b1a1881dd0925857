import type { Catalogue } from '../../core/catalogue/catalogue';
import type { RowChange } from '../../core/catalogue/catalogueDiff';
import { catalogueTables, REQUIRED_TABLES, type TableName } from '../../core/catalogue/tables/catalogueTables';
import type { WorkbookCatalogue } from '../catalogue/workbookCatalogue';
import { changeSummary } from './changeSummary';
import { chosenTables, loadedCatalogue, type HeadingMaps, type LoadedCatalogue } from './loadedCatalogue';
import { freshDoubts } from './freshDoubts';
import { firstOfEach } from './loadedTable';
import type { OfficeMemory } from './officeMemory';
import type { FileTables } from './tablesFromFiles';

/** The office's catalogue compared with that of a workbook. */
export interface ComparedOffer {
  /**
   * `same`: nothing to take. `first`: the workbook has no parts data. `newer`: the workbook has what the office had before.
   * `differs`: the workbook has rows of its own, or parts data from elsewhere.
   */
  readonly kind: 'same' | 'first' | 'newer' | 'differs';
  /** Handle of the office's file by itself; "" where it is a catalogue only together with tables of the workbook. */
  readonly handle: string;
  /** What taking it changes, in half a sentence; "" where nothing. */
  readonly summary: string;
  readonly result: LoadedCatalogue;
  /** Tables of the file that are left alone unless somebody says otherwise. */
  readonly spared: ReadonlySet<TableName>;
  /** This very file was taken: what differs since, somebody changed on purpose. */
  readonly isTaken: boolean;
  /**
   * It can be taken without a look at its rows: the workbook has what the office had before, or nothing; nothing is removed, blanked or converted,
   * no more rows are left out or look wrong than before, and all headings are understood.
   */
  readonly isPlain: boolean;
}

/** What the office's catalogue is to a workbook; where it cannot be used, a sentence says why. */
export type OfficeOffer = ComparedOffer | { readonly kind: 'unusable'; readonly reason: string };

/** What an offer is made of. */
export interface OfficeFacts {
  /** Tables of the office's file. */
  readonly file: FileTables;
  readonly standing: WorkbookCatalogue | undefined;
  readonly memory: OfficeMemory;
  readonly maps: HeadingMaps;
  /** Handles of catalogues that were once the office's, as far as this computer knows. */
  readonly known: ReadonlySet<string>;
}

const SPARED: TableName = 'machines';
const NO_TABLES: ReadonlySet<TableName> = new Set();

/**
 * What a catalogue of the office's tables would be. Recorded dials belong to the machines of the workbook: a table Machines of the office
 * that lacks some of them does not replace them.
 */
function loaded({ file, standing, maps }: OfficeFacts): Pick<ComparedOffer, 'result' | 'spared'> {
  const taken = firstOfEach(file.tables);
  const result = loadedCatalogue(chosenTables(file.tables, taken, maps), standing);
  const losesDials = result.changes?.some(({ table, kind }) => table === SPARED && kind === 'removed') ?? false;
  if (!losesDials) return { result, spared: NO_TABLES };
  const others = new Map([...taken].filter(([, table]) => table !== SPARED));
  return { result: loadedCatalogue(chosenTables(file.tables, others, maps), standing), spared: new Set([SPARED]) };
}

function summaryOf({ catalogue, changes, unitChange }: LoadedCatalogue): string {
  if (changes) return [changeSummary(changes), unitChange && `units ${unitChange}`].filter(Boolean).join(', ');
  return catalogue!.handle.replace(/^\S+ \((.*?)\).*$/, '$1');
}

const UNKNOWN_CELLS = 'the pane cannot read which cells the CATALOGUE formula of this workbook takes, so it cannot replace them';

/** Tables that no catalogue can do without, and that neither the file nor the workbook has. */
function lackingTables({ file, standing }: OfficeFacts): readonly string[] {
  const there = new Set([...firstOfEach(file.tables).values(), ...(standing?.tables ?? []).map(({ table }) => table)]);
  return REQUIRED_TABLES.filter(table => !there.has(table)).map(table => catalogueTables[table].sheet);
}

const losesNothing = (change: RowChange) =>
  change.kind === 'added' || (change.kind === 'changed' && change.fields.every(({ after }) => after !== undefined));

function isPlain(
  kind: ComparedOffer['kind'],
  { result, isTaken }: Pick<ComparedOffer, 'result' | 'isTaken'>,
  before?: Catalogue,
) {
  const { catalogue, changes = [], unitChange, chosen } = result;
  return (
    (kind === 'newer' || kind === 'first') &&
    !isTaken &&
    unitChange === '' &&
    changes.every(losesNothing) &&
    chosen.every(({ unconfirmed }) => unconfirmed.length === 0) &&
    freshDoubts(before, catalogue!) === 0
  );
}

/** Compares the office's catalogue with that of a workbook, and says what to offer. */
export function officeOffer(facts: OfficeFacts): OfficeOffer {
  const { file, standing, memory, maps, known } = facts;
  const [refusal] = file.refusals;
  if (refusal !== undefined) return { kind: 'unusable', reason: refusal };
  if (standing && !standing.canBeFollowed) return { kind: 'unusable', reason: UNKNOWN_CELLS };
  const lacking = lackingTables(facts);
  if (lacking.length > 0) return { kind: 'unusable', reason: `it has no table ${lacking.join(', no table ')}` };
  const { result, spared } = loaded(facts);
  if (!result.catalogue) return { kind: 'unusable', reason: result.reason };
  const alone = loadedCatalogue(chosenTables(file.tables, firstOfEach(file.tables), maps), undefined);
  const handle = alone.catalogue?.handle ?? '';
  const isTaken = handle !== '' && memory.taken === handle;
  const offer = { handle, summary: summaryOf(result), result, spared, isTaken };
  const before = standing?.catalogue;
  const isOffices = before !== undefined && (memory.handle === before.handle || known.has(before.handle));
  const kind = !standing ? 'first' : offer.summary === '' ? 'same' : isOffices ? 'newer' : 'differs';
  return { kind, ...offer, isPlain: isPlain(kind, offer, before) };
}
