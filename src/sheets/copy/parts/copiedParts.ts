import type { Catalogue } from '../../../core/catalogue/catalogue';
import { rateOf } from '../../../core/catalogue/rateOf';
import { rateKey } from '../../../core/catalogue/duplicates';
import type { TableName } from '../../../core/catalogue/tables/catalogueTables';
import { TradeError } from '../../../core/tradeError';
import type { WorkbookCatalogue } from '../../catalogue/workbookCatalogue';
import { NotNative } from '../notNative';
import type { AddedCells } from './addedCells';
import { crimpKeys, patternRows, type PartsPair } from './crimpKeys';
import { MachineTable } from './machineTable';
import { foldedName, nameKeys, neutralFormula, separatorFor, WILDCARDS } from './names';
import { PartsTable, type AddedRow } from './partsTable';

/** The parts data as the copy has them: where look-ups of plain formulas go. */
export class CopiedParts {
  readonly catalogue: Catalogue;
  /** Stands between the names of a pair in a key. */
  readonly separator: string;
  /** Names hold signs that a search takes for wildcards. */
  private readonly hasWild: boolean;
  private readonly tables = new Map<TableName, PartsTable>();
  private readonly keys = new Map<string, string>();
  private machineTable: MachineTable | undefined;

  constructor(
    private readonly found: WorkbookCatalogue,
    private readonly sheets: ReadonlyMap<string, AddedCells>,
    private readonly pairs: readonly PartsPair[],
  ) {
    this.catalogue = found.catalogue!;
    const names = [
      ...[...this.catalogue.hoses].map(({ hose }) => hose),
      ...[...this.catalogue.fittings].map(({ fitting }) => fitting),
      ...this.catalogue.crimps.flatMap(({ hose, fitting }) => [hose, fitting]),
    ];
    this.separator = separatorFor([...names, ...this.catalogue.machines.map(({ machine }) => machine)]);
    const machines = this.catalogue.machines.map(({ machine }) => machine);
    const exact = [...names, ...machines].filter(name => !name.endsWith('*'));
    this.hasWild = exact.some(name => WILDCARDS.test(name));
    this.requireDistinct(this.catalogue.hoses.map(({ hose }) => hose));
    this.requireDistinct(this.catalogue.fittings.map(({ fitting }) => fitting));
  }

  /** Two names that differ in blanks only are one name to other programs. */
  private requireDistinct(names: readonly string[]): void {
    const folded = new Set(names.map(foldedName));
    if (folded.size < names.length) throw new NotNative('two parts have names that differ in blanks only');
  }

  /** A table; undefined where the catalogue has none. */
  private tableOrNone(name: TableName): PartsTable | undefined {
    const known = this.tables.get(name);
    if (known) return known;
    const table = this.found.tables.find(each => each.table === name);
    if (!table || this.catalogue.rows[name].length === 0) return undefined;
    const sheet = this.sheets.get(table.at.sheet);
    if (!sheet) throw new NotNative(`the sheet ${table.at.sheet} is not in the copy`);
    const added: readonly AddedRow[] = name === 'crimps' ? patternRows(this.catalogue, this.pairs) : [];
    const made = new PartsTable(name, table, this.catalogue.rows[name], added, sheet);
    this.tables.set(name, made);
    return made;
  }

  private table(name: TableName): PartsTable {
    const found = this.tableOrNone(name);
    if (!found) throw new NotNative(`the catalogue has no ${name}`);
    return found;
  }

  private keyRange(name: string, make: () => string): string {
    const known = this.keys.get(name);
    if (known !== undefined) return known;
    const made = make();
    this.keys.set(name, made);
    return made;
  }

  private rowOf(text: string, keys: string): string {
    return `MATCH(${this.hasWild ? neutralFormula(text) : text},${keys},0)`;
  }

  /** Conditions under which a name cannot be searched for: it has a sign that a search takes for a wildcard, and no part has one. */
  refusedNames(texts: readonly string[]): string[] {
    if (this.hasWild) return [];
    const all = texts.join('&');
    return [`LEN(SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(${all},"*",""),"?",""),"~",""))<LEN(${all})`];
  }

  /** Place of a hose's row; `text` is the name without outer blanks. An error where there is none. */
  hoseRow(text: string): string {
    const table = this.table('hoses');
    return this.rowOf(
      text,
      this.keyRange('hoses', () => nameKeys(table, 'hose')),
    );
  }

  fittingRow(text: string): string {
    const table = this.table('fittings');
    return this.rowOf(
      text,
      this.keyRange('fittings', () => nameKeys(table, 'fitting')),
    );
  }

  /** Place of the crimp row of a pair. */
  crimpRow(hose: string, fitting: string): string {
    const table = this.table('crimps');
    const keys = this.keyRange('crimps', () => crimpKeys(this.catalogue, table, this.separator));
    return this.rowOf(`${hose}&"${this.separator}"&${fitting}`, keys);
  }

  /** A field at the place of a row; undefined where no row states it. */
  field(table: 'hoses' | 'fittings' | 'crimps', field: string, row: string): string | undefined {
    const range = this.table(table).field(field);
    return range && `INDEX(${range},${row})`;
  }

  /** A field that every good row has. */
  needed(table: 'hoses' | 'fittings' | 'crimps', field: string, row: string): string {
    const found = this.field(table, field, row);
    if (!found) throw new NotNative(`the catalogue does not state ${field}`);
    return found;
  }

  /** Machines and their own dials. */
  machines(): MachineTable | undefined {
    const table = this.tableOrNone('machines');
    if (!table) return undefined;
    return (this.machineTable ??= new MachineTable(this.catalogue, table, this.separator, (text, keys) =>
      this.rowOf(text, keys),
    ));
  }

  /** A rate's cell, or the number; undefined where there is none. */
  rate(name: string): string | undefined {
    let value;
    try {
      value = rateOf(this.catalogue, name);
    } catch (error) {
      if (error instanceof TradeError) throw new NotNative(`the rate ${name} was left out of the catalogue`);
      throw error;
    }
    if (!value) return undefined;
    const table = this.table('rates');
    const row = table.goodRows.find(({ values }) => rateKey(String(values.rate)) === rateKey(name));
    return (row && table.cellOf('value', row.row)) ?? value.toString();
  }
}
