import { spawn, type ChildProcess } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Mutation } from './mutations';

export interface Mutant extends Mutation {
  readonly file: string;
}

export type Fate = 'killed' | 'survived' | 'timed out';

/** What only measures how fast the code is. */
const MEASURES = '/tests/core/catalogue/speed';

/** Tests that take long, most of them because they try thousands of cases: only asked where they mirror the source, or with SLOW=yes. */
const SLOW = [
  'core/cutplan/',
  'core/hash/',
  'core/quality/causes/(plantedBooks|trial)',
  'core/tables/rangeConstants',
  'core/units/scaledDecimal',
  'core/crimp/bothWays',
  'sheets/analysis/plantedSheets',
  'sheets/copy/plain(Rows|Parts)',
  'sheets/cutlist/(judgeWeek|planCuts)',
  'sheets/parts/hostileFiles',
];
/** The tests of all other folders may take so many times as long as those of one. */
const FAR = 15;
const FUNCTIONS = 'tests/{functions,cells}/**/*.test.ts';
const REST = 'tests/{core,sheets}/**/*.test.ts';

/** The folder of tests that mirrors a source; the nearest above it where it has none of its own. */
function mirror(file: string): string {
  let folder = dirname(file).replace(/^src/, 'tests');
  while (!existsSync(folder)) folder = dirname(folder);
  return folder;
}

/** A copy of the working tree in which sources are mutated, so that nobody's files are touched. */
export class MutantRunner {
  private readonly root = realpathSync(mkdtempSync(join(tmpdir(), 'benchrow-mutants-')));
  private running: ChildProcess | undefined;

  constructor(
    private readonly seconds: number,
    private readonly withSlow: boolean,
    private readonly onlyNear: boolean,
  ) {
    const left = ['node_modules', '.git', 'artifacts'];
    cpSync('.', this.root, { recursive: true, filter: path => !left.includes(path) });
    symlinkSync(realpathSync('node_modules'), join(this.root, 'node_modules'), 'junction');
  }

  close(): void {
    this.running?.kill('SIGKILL');
    rmSync(this.root, { recursive: true, force: true });
  }

  /** What becomes of a mutant: the tests of the mirrored folder are asked first, the others that reach the file only if it survives. */
  async fateOf({ file, start, end, replacement }: Mutant): Promise<Fate> {
    const source = readFileSync(join(this.root, file), 'utf8');
    writeFileSync(join(this.root, file), source.slice(0, start) + replacement + source.slice(end));
    try {
      const own = mirror(file);
      const elsewhere = [`/${own}/[^/]*$`, ...(this.withSlow ? [] : SLOW.map(path => `/tests/${path}`))];
      const near = await this.tested(file, `${own}/*.test.ts`, this.seconds, []);
      // Functions are quick, and most of the core is seen in them; they reach no sheets.
      const isSheets = file.startsWith('src/sheets/');
      const called = near === 'survived' && !isSheets ? await this.tested(file, FUNCTIONS, this.seconds, elsewhere) : near;
      return called === 'survived' && !this.onlyNear ? await this.tested(file, REST, this.seconds * FAR, elsewhere) : called;
    } finally {
      writeFileSync(join(this.root, file), source);
    }
  }

  private tested(file: string, tests: string, seconds: number, ignored: readonly string[]): Promise<Fate> {
    const jest = ['node_modules/jest/bin/jest.js', '--findRelatedTests', file, '--bail', '--runInBand', '--passWithNoTests'];
    const which = ['--testMatch', `**/${tests}`, '--testPathIgnorePatterns', MEASURES, ...ignored];
    // The limit is one of processor time: a busy machine makes no mutant time out, a loop without an end does not wait for the clock.
    const limited = ['-c', `ulimit -t ${seconds}; exec "$0" "$@"`, process.execPath];
    const child = spawn('sh', [...limited, ...jest, ...which], { cwd: this.root, stdio: 'ignore' });
    this.running = child;
    return new Promise((done, fail) => {
      child.on('error', fail).on('exit', (code, signal) => done(signal ? 'timed out' : code === 0 ? 'survived' : 'killed'));
    });
  }
}
