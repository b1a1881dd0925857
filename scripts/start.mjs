// The try-out sheet: builds, serves dist/ on this machine, opens the browser, and builds again after every change.
import { spawn } from 'node:child_process';
import { RspackDevServer } from '@rspack/dev-server';
import { portIsFree } from './portIsFree.mjs';
import { developmentCompiler } from './rspack/developmentCompiler.mjs';

const FIRST_PORT = 3000;

async function freePort() {
  for (let port = FIRST_PORT; port < FIRST_PORT + 100; port++) if (await portIsFree(port)) return port;
  throw new Error(`no free port from ${FIRST_PORT} on`);
}

/** Opens the page where there is a screen to open it on; a machine without one just gets the address. */
function openBrowser(url) {
  const hasScreen = process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  if (process.env.CI || !hasScreen || process.argv.includes('--no-open')) return;
  const [command, ...args] = { win32: ['cmd', '/c', 'start', ''], darwin: ['open'] }[process.platform] ?? ['xdg-open'];
  spawn(command, [...args, url], { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref();
}

console.log('Building the try-out sheet …');
const compiler = developmentCompiler();
const port = await freePort();
const url = `http://localhost:${port}/preview.html`;
const server = new RspackDevServer(
  {
    host: 'localhost',
    port,
    hot: false,
    liveReload: true,
    client: { overlay: false, logging: 'warn' },
    static: false,
  },
  compiler,
);

let opened = false;
compiler.hooks.done.tap('start', stats => {
  if (stats.hasErrors()) return console.error('The build has errors, see above; it is tried again when a file changes.');
  if (opened) return console.log('Built again.');
  opened = true;
  console.log(`\n  Try-out sheet:  ${url}\n\n  Change a cell and watch the others follow. Stop with Ctrl+C.\n`);
  openBrowser(url);
});
await server.start();
