import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { MutantRunner, type Fate, type Mutant } from './mutantRunner';
import { mutationsOf } from './mutations';
import { seededUniform } from './seededUniform';

/*
 * Do the tests notice when the code is wrong? A sample of small changes, one at a time, each of which some test should fail on.
 * COUNT mutants are drawn by SEED; AT=src/core/length tries all in a folder, a file or a line (AT=src/core/length/cutLength.ts:31) instead, or COUNT of them.
 * WITHOUT= takes the cut plan's solver in, SLOW=yes asks slow tests elsewhere than in the mirrored folder too, NEAR=yes asks only
 * those of the mirrored folder and of the functions. SECONDS of processor time end what hangs, FROM=51 goes on after 50 of the same sample.
 */

const FOLDERS = ['src/core', 'src/cells', 'src/sheets'];
const FATES: readonly Fate[] = ['killed', 'survived', 'timed out'];
const {
  SEED = '1',
  COUNT,
  AT,
  WITHOUT = 'src/core/cutplan',
  SLOW,
  NEAR,
  SECONDS = '40',
  FROM = '1',
  WORKERS = '2',
} = process.env;

interface Source {
  readonly file: string;
  readonly text: string;
  readonly statements: number;
  readonly mutants: Mutant[];
}

function sourcesOf(folder: string): Source[] {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).map(name => join(folder, name).replaceAll('\\', '/'));
  return files.filter(isSampled).map(file => {
    const text = readFileSync(file, 'utf8');
    const { mutations, statements } = mutationsOf(file, text);
    return { file, text, statements, mutants: mutations.map(mutation => ({ ...mutation, file })) };
  });
}

const isSampled = (file: string) => file.endsWith('.ts') && !(WITHOUT && file.startsWith(WITHOUT));
const lineOf = ({ text }: Source, { start }: Mutant) => text.slice(0, start).split('\n').length;

/** Draws without putting back: a file by its statements, then one of its mutations. */
function drawn(sources: readonly Source[], count: number, random: () => number): Mutant[] {
  const taken: Mutant[] = [];
  while (taken.length < count) {
    const left = sources.filter(({ mutants }) => mutants.length > 0);
    if (left.length === 0) break;
    let at = random() * left.reduce((sum, { statements }) => sum + statements, 0);
    const { mutants } = left.find(({ statements }) => (at -= statements) < 0) ?? left.at(-1)!;
    taken.push(...mutants.splice(Math.floor(random() * mutants.length), 1));
  }
  return taken;
}

/** Half of the sample is shared equally between the folders, half by their statements: the smallest would hardly be seen otherwise. */
function sample(folders: readonly Source[][], count: number): Mutant[] {
  const random = seededUniform(Number(SEED));
  const weights = folders.map(sources => sources.reduce((sum, { statements }) => sum + statements, 0));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const share = (weight: number) => Math.round((count / 2) * (1 / folders.length + weight / total));
  return folders.flatMap((sources, index) => drawn(sources, share(weights[index]!), random));
}

const folders = FOLDERS.map(sourcesOf);
const sources = new Map(folders.flat().map(source => [source.file, source]));
const isAsked = (mutant: Mutant) => {
  const place = `${mutant.file}:${lineOf(sources.get(mutant.file)!, mutant)}`;
  return place === AT || place.startsWith(`${AT}/`) || place.startsWith(`${AT}:`);
};

/** All mutants of a place, or a sample of them. */
function ofPlace(): Mutant[] {
  const asked = folders.flat().map(source => ({ ...source, mutants: source.mutants.filter(isAsked) }));
  return COUNT ? drawn(asked, Number(COUNT), seededUniform(Number(SEED))) : asked.flatMap(({ mutants }) => mutants);
}

const waiting = (AT ? ofPlace() : sample(folders, Number(COUNT ?? 150))).slice(Number(FROM) - 1);

/** Where it is and the line before and after; a change of several lines is shown by its first. */
function shown(mutant: Mutant): string {
  const source = sources.get(mutant.file)!;
  const { start, end, replacement } = mutant;
  const from = source.text.lastIndexOf('\n', start - 1) + 1;
  const after = source.text.slice(from, start) + replacement + source.text.slice(end);
  const line = (text: string) => text.split('\n')[0]!.trim();
  return `${mutant.file}:${lineOf(source, mutant)} (${mutant.kind})\n    - ${line(source.text.slice(from))}\n    + ${line(after)}`;
}

const runners = Array.from({ length: Number(WORKERS) }, () => new MutantRunner(Number(SECONDS), SLOW === 'yes', NEAR === 'yes'));
const close = () => runners.forEach(runner => runner.close());
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    close();
    process.exit(1);
  });
}

const fates = new Map<Mutant, Fate>();
const all = waiting.length;
console.log(`${all} mutants`);
async function work(runner: MutantRunner): Promise<void> {
  for (let mutant = waiting.shift(); mutant; mutant = waiting.shift()) {
    const fate = await runner.fateOf(mutant);
    fates.set(mutant, fate);
    console.log(`${fates.size} of ${all}: ${fate}  ${shown(mutant)}`);
  }
}
await Promise.all(runners.map(work)).finally(close);

console.log(`\n| folder | ${FATES.join(' | ')} |\n| --- | ${FATES.map(() => '---').join(' | ')} |`);
for (const folder of FOLDERS) {
  const own = [...fates].filter(([{ file }]) => file.startsWith(`${folder}/`));
  console.log(`| ${folder} | ${FATES.map(fate => own.filter(each => each[1] === fate).length).join(' | ')} |`);
}
