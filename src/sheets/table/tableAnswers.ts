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

async function changeAnswers(
  workbook: Workbook,
  changed: (all: readonly StoredAnswer[]) => readonly StoredAnswer[],
): Promise<void> {
  const change = async () => {
    const all = changed(await allAnswers(workbook));
    await workbook.remember(KEY, all.length > 0 ? JSON.stringify(all) : undefined);
  };
  const before = underWay.get(hostOf(workbook)) ?? Promise.resolve();
  const done = before.then(change, change);
  underWay.set(hostOf(workbook), done);
  await done;
}

/** Remembers an answer with the workbook; undefined takes it back. */
export function rememberAnswer(
  workbook: Workbook,
  kind: TableKind,
  sheet: string,
  asked: Asked,
  heading: string,
  answer: string | undefined,
): Promise<void> {
  const key = correctionKey(heading);
  return changeAnswers(workbook, all => {
    const others = all.filter(([of, on, what, about]) => !(of === kind && on === sheet && what === asked && about === key));
    return answer === undefined ? others : [...others, [kind, sheet, asked, key, answer]];
  });
}

/** What was said about the tables of one kind on a sheet holds for a sheet that goes on from it: nobody is asked twice. */
export function answersGoOn(workbook: Workbook, kind: TableKind, from: string, to: string): Promise<void> {
  return changeAnswers(workbook, all => [
    ...all.filter(([of, on]) => !(of === kind && on === to)),
    ...all.flatMap(([of, on, ...said]): StoredAnswer[] => (of === kind && on === from ? [[of, to, ...said]] : [])),
  ]);
}
