import * as v from 'valibot';
import { hostOf } from '../../workbook/shownWorkbook';
import type { Workbook } from '../../workbook/workbook';
import { correctionKey, type HeadingCorrections } from './headingCorrections';
import { recalled } from './recalled';

/** Kinds of table whose reading people can correct. */
export type TableKind = 'jobs' | 'rack' | 'crimps' | 'pieces' | 'gauges';

/** What a table's reading may ask; the answer is remembered with the workbook. */
export type Asked = 'role' | 'unit' | 'comma' | 'meaning';

/** Answers about one table: heading, or what else was asked about (as `correctionKey`) → what was said. */
export type TableAnswers = Readonly<Record<Asked, HeadingCorrections>>;

export const NO_ANSWERS: TableAnswers = { role: new Map(), unit: new Map(), comma: new Map(), meaning: new Map() };

const KEY = 'tables';
const Stored = v.array(
  v.tuple([v.string(), v.string(), v.picklist(['role', 'unit', 'comma', 'meaning']), v.string(), v.string()]),
);
/** Kind of table, sheet, what was asked, heading, answer. */
type StoredAnswer = v.InferOutput<typeof Stored>[number];

const allAnswers = (workbook: Workbook): Promise<readonly StoredAnswer[]> => recalled(workbook, KEY, Stored, []);

/** What was said about the tables of one kind on a sheet. */
export async function tableAnswers(workbook: Workbook, kind: TableKind, sheet: string): Promise<TableAnswers> {
  const own = (await allAnswers(workbook)).filter(([of, on]) => of === kind && on === sheet);
  const mapOf = (asked: Asked) => new Map(own.flatMap(([, , what, heading, said]) => (what === asked ? [[heading, said]] : [])));
  return { role: mapOf('role'), unit: mapOf('unit'), comma: mapOf('comma'), meaning: mapOf('meaning') };
}

/** The answers of each workbook that are still being remembered: one after the other, so that none is lost. */
const underWay = new WeakMap<Workbook, Promise<unknown>>();

/** Remembers an answer with the workbook; undefined takes it back. */
export async function rememberAnswer(
  workbook: Workbook,
  kind: TableKind,
  sheet: string,
  asked: Asked,
  heading: string,
  answer: string | undefined,
): Promise<void> {
  const key = correctionKey(heading);
  const add = async () => {
    const others = (await allAnswers(workbook)).filter(
      ([of, on, what, about]) => !(of === kind && on === sheet && what === asked && about === key),
    );
    const all: readonly StoredAnswer[] = answer === undefined ? others : [...others, [kind, sheet, asked, key, answer]];
    await workbook.remember(KEY, all.length > 0 ? JSON.stringify(all) : undefined);
  };
  const before = underWay.get(hostOf(workbook)) ?? Promise.resolve();
  const added = before.then(add, add);
  underWay.set(hostOf(workbook), added);
  await added;
}
