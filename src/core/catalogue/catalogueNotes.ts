import { quotedText } from '../quotedText';
import type { Catalogue, CatalogueIndex } from './catalogue';
import { catalogueDialsNotes } from './catalogueDials';
import { rateKey } from './duplicates';
import type { Note } from './note';
import { partKey } from './partName';
import { partPresence, type PartPresence } from './partPresence';
import { KNOWN_RATES, ZERO_RATES } from './rateNames';
import type { ReadRow } from './readRows';
import { numberIn, textIn } from './rowFacts';
import { crimpDiameterNote, depthNote, hoseNotes, pressureNote, sizeLimits, type Noticed, type SizeLimits } from './sizeNotes';
import type { TableSchema } from './tableSchema';
import { catalogueTables, TABLE_NAMES, type TableName } from './tables/catalogueTables';

interface Context extends SizeLimits {
  readonly index: CatalogueIndex;
  readonly present: PartPresence;
  readonly dies: ReadonlyMap<string, ReadRow>;
}

function hosePartNote(row: ReadRow, { present }: Context): Noticed {
  const hose = textIn(row, 'hose');
  if (hose === undefined || present.hose(hose)) return [];
  return [['hose', `Hose ${quotedText(hose)} is not in the table Hoses`]];
}

function partNotes(row: ReadRow, context: Context): Noticed {
  const fitting = textIn(row, 'fitting');
  const own = hosePartNote(row, context);
  if (fitting === undefined || context.present.fitting(fitting)) return own;
  const text = fitting.endsWith('*')
    ? `no fitting in the table Fittings begins like ${quotedText(fitting)}`
    : `Fitting ${quotedText(fitting)} is not in the table Fittings`;
  return [...own, ['fitting', text]];
}

function dieNote(row: ReadRow, { dies }: Context): Noticed {
  const name = textIn(row, 'die');
  if (name === undefined || dies.size === 0) return [];
  const die = dies.get(partKey(name));
  if (!die) return [['die', `Die ${quotedText(name)} is not in the table Dies`]];
  const [length, crimpLength] = [numberIn(die, 'length'), numberIn(row, 'crimpLength')];
  if (length === undefined || crimpLength === undefined || length >= crimpLength) return [];
  return [['crimpLength', `Crimp length is ${crimpLength}, longer than its die ${name} (${length})`]];
}

function crimpNotes(row: ReadRow, context: Context): Noticed {
  const hose = context.index.hoses.get(partKey(textIn(row, 'hose') ?? ''))?.row;
  return [
    ...partNotes(row, context),
    ...dieNote(row, context),
    ...crimpDiameterNote(row, hose?.outsideDiameter, context),
    ...depthNote(row, hose?.bore, context),
  ];
}

function fluidNotes(row: ReadRow, { present, index }: Context): Noticed {
  const hose = textIn(row, 'hose');
  const own = partKey(textIn(row, 'fluid')!);
  const names = index.fluids.find(({ entry }) => entry.row === row.values)?.names ?? [];
  const shared = names
    .slice(1)
    .find(name => index.fluids.some(other => other.names.includes(name) && other.names[0] !== names[0]));
  return [
    ...(hose === undefined || present.hose(hose)
      ? []
      : [
          [
            'hose',
            hose.endsWith('*') ? `no hose begins like ${quotedText(hose)}` : `Hose ${quotedText(hose)} is not in the table Hoses`,
          ] as const,
        ]),
    ...(shared === undefined ? [] : [['alsoCalled', `${quotedText(shared)} names another fluid than ${own}, too`] as const]),
  ];
}

const known = new Set(KNOWN_RATES.map(rateKey));

function rateNotes(row: ReadRow): Noticed {
  const rate = textIn(row, 'rate')!;
  return known.has(rateKey(rate))
    ? []
    : [['rate', `nothing reads the rate ${quotedText(rate)}; rates are ${KNOWN_RATES.join(', ')}`]];
}

const ROW_NOTES: Partial<Record<TableName, (row: ReadRow, context: Context) => Noticed>> = {
  hoses: hoseNotes,
  fittings: (row, context) => [...pressureNote(row, context), ...depthNote(row, numberIn(row, 'bore'), context)],
  crimps: crimpNotes,
  machines: partNotes,
  rates: rateNotes,
  derating: hosePartNote,
  fluids: fluidNotes,
};

/** Rates that are missing and count as 0; none where there is no table of rates at all. */
function zeroRates({ rows, index }: Catalogue): Note[] {
  if (rows.rates.length === 0) return [];
  return ZERO_RATES.filter(name => !index.rates.has(rateKey(name))).map(name => ({
    sheet: catalogueTables.rates.sheet,
    row: 0,
    column: catalogueTables.rates.fields.rate.heading,
    text: `there is no rate ${quotedText(name)}: it counts as 0`,
  }));
}

function contextOf({ rows, units, index }: Catalogue): Context {
  const good = rows.dies.filter(row => row.problems.length === 0);
  return {
    ...sizeLimits(units),
    index,
    present: partPresence(index),
    dies: new Map(good.map(row => [partKey(textIn(row, 'die')!), row])),
  };
}

/** What looks wrong in the rows of a catalogue that stay, and which rates count as 0; in table and row order. */
export function catalogueNotes(catalogue: Catalogue): readonly Note[] {
  const context = contextOf(catalogue);
  return TABLE_NAMES.flatMap(name => {
    const { sheet, fields }: TableSchema = catalogueTables[name];
    const notice = ROW_NOTES[name];
    const ofRows = catalogue.rows[name].flatMap(row => {
      if (!notice || row.problems.length > 0) return [];
      return notice(row, context).map(([key, text]) => ({ sheet, row: row.row, column: fields[key]!.heading, text }));
    });
    if (name === 'machines') return [...ofRows, ...catalogueDialsNotes(catalogue.rows.machines)];
    return name === 'rates' ? [...ofRows, ...zeroRates(catalogue)] : ofRows;
  });
}
