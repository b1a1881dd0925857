import { spawn, spawnSync } from 'node:child_process';

// Room for what is made and soon thrown away, before the garbage is collected: a tenth to a seventh of the time of each program here.
const FLAGS = ['--max-semi-space-size=64'];

/**
 * Runs a program, its output on the terminal; ends this process with its exit code where it fails.
 * @param {string} script path from the project's folder, e.g. `node_modules/jest/bin/jest.js`
 * @param {string[]} args
 */
export function step(script, args) {
  const done = spawnSync(process.execPath, [...FLAGS, script, ...args], { stdio: 'inherit' });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

function finished(script, args) {
  const program = spawn(process.execPath, [...FLAGS, script, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
  const output = [];
  for (const stream of [program.stdout, program.stderr]) stream.on('data', part => output.push(part));
  return new Promise((done, fail) => {
    program.on('error', fail);
    program.on('close', code => done({ code: code ?? 1, output: Buffer.concat(output) }));
  });
}

/**
 * Runs several such programs at the same time, each one's output in one piece; ends this process where any fails, after all have said what they found.
 * @param {readonly [script: string, args: string[]][]} programs
 */
export async function stepsAtOnce(programs) {
  const all = programs.map(([script, args]) => finished(script, args));
  let worst = 0;
  for (const one of all) {
    const { code, output } = await one;
    process.stdout.write(output);
    worst ||= code;
  }
  if (worst !== 0) process.exit(worst);
}
