// The add-in in Excel on this machine: development certificates, HTTPS server, sideloading. Without Excel: how to do it by hand.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { RspackDevServer } from '@rspack/dev-server';
import { developmentCertificates } from './developmentCertificates.mjs';
import { installPackages } from './installPackages.mjs';
import { portIsFree } from './portIsFree.mjs';
import { developmentCompiler } from './rspack/developmentCompiler.mjs';

/** The port that the manifest of a build without BASE_URL names: no other will do. */
const PORT = 3000;
const manifest = join(process.cwd(), 'dist', 'manifest.xml');

const BY_HAND = `
There is no Excel here that can be started. The add-in can be loaded by hand, from any machine that reaches this one's address:

  Excel on the web  Home > Add-ins > More Add-ins > My Add-ins > Upload My Add-in, and choose
                    ${manifest}
                    (npm run build writes it)
  Excel for Windows share a folder, put the manifest in it, and name the share under File > Options > Trust Center > Trust Center
                    Settings > Trusted Add-in Catalogs (tick "Show in Menu"); restart, then Home > Add-ins > Shared Folder
  Excel for Mac     copy the manifest to ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef, restart, then Home > Add-ins

The manifest names https://localhost:${PORT}. For other machines build for an address that they reach: BASE_URL=https://… npm run build,
and put dist/ there. Without any Excel at all: npm start opens the try-out sheet in a browser.
`;

/** True where desktop Excel may stand: sideloading exists for Windows and Mac only. */
function mayHaveExcel() {
  if (process.platform === 'darwin') return existsSync('/Applications/Microsoft Excel.app');
  return process.platform === 'win32';
}

/** What only this command needs stands in a folder of its own and is installed when it is asked for. */
const tools = join(process.cwd(), 'scripts', 'excelTools');
const debuggingTool = join(tools, 'node_modules', 'office-addin-debugging', 'cli.js');

function sideload() {
  const child = spawn(process.execPath, [debuggingTool, 'start', manifest, 'desktop', '--app', 'excel', '--no-debug'], {
    stdio: 'inherit',
  });
  child.on('exit', code => {
    if (code !== 0) console.log(BY_HAND);
  });
}

/** Takes the add-in out of Excel again and ends the server; a second Ctrl+C ends at once. */
function endOnSignal(devServer, isSideloaded) {
  let ending = false;
  const end = async () => {
    if (ending) process.exit(1);
    ending = true;
    if (isSideloaded()) {
      console.log('Taking the add-in out of Excel …');
      spawnSync(process.execPath, [debuggingTool, 'stop', manifest, 'desktop'], { stdio: 'inherit' });
    }
    await devServer.stop();
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, end);
}

async function serve() {
  if (process.env.BASE_URL) console.log(`BASE_URL is ignored: this serves https://localhost:${PORT}.`);
  delete process.env.BASE_URL;
  if (!(await portIsFree(PORT))) {
    console.error(
      `Port ${PORT} of this machine is in use, and the manifest names it. Stop what uses it: an npm start or npm run excel?`,
    );
    process.exit(1);
  }
  if (mayHaveExcel()) await installPackages(tools, 'The tool that puts an add-in into Excel', 400);
  const { options, advice } = await developmentCertificates();
  const devServer = new RspackDevServer(
    {
      host: 'localhost',
      port: PORT,
      server: { type: 'https', options },
      headers: { 'Access-Control-Allow-Origin': '*' },
      hot: false,
      client: false,
      setupExitSignals: false,
      // Excel and people take the manifest from the folder, everything else from the server.
      devMiddleware: { writeToDisk: file => file === manifest },
      static: false,
    },
    developmentCompiler(),
  );
  let isSideloaded = false;
  endOnSignal(devServer, () => isSideloaded);
  await devServer.start();
  devServer.middleware.waitUntilValid(() => {
    console.log(`The add-in is served at https://localhost:${PORT}. Stop with Ctrl+C.${advice && `\n${advice}`}`);
    isSideloaded = mayHaveExcel();
    if (isSideloaded) sideload();
    else console.log(BY_HAND);
  });
}

if (mayHaveExcel() || process.argv.includes('--serve')) {
  await serve().catch(error => {
    console.error(`The add-in cannot be served: ${error.message ?? error}`);
    console.error('Excel loads add-ins over HTTPS only. Certificates are made with: npx office-addin-dev-certs install');
    process.exit(1);
  });
} else {
  console.log(BY_HAND);
  console.log('To serve the add-in here all the same: npm run excel -- --serve');
}
