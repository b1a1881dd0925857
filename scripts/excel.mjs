// The add-in in Excel on this machine: development certificates, HTTPS server, sideloading. Without Excel: how to do it by hand.
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import devCerts from 'office-addin-dev-certs';
import webpack from 'webpack';
import WebpackDevServer from 'webpack-dev-server';
import webpackConfig from '../webpack.config.js';

const PORT = 3000;
const manifest = join(process.cwd(), 'dist', 'manifest.xml');

const BY_HAND = `
There is no Excel here that can be started. The add-in can be loaded by hand, from any machine that reaches this one's address:

  Excel on the web  Home > Add-ins > More Add-ins > My Add-ins > Upload My Add-in, and choose
                    ${manifest}
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

async function httpsOptions() {
  try {
    return await devCerts.getHttpsServerOptions();
  } catch (error) {
    console.error(`No development certificates: ${error.message ?? error}`);
    console.error(
      'They are made with: npx office-addin-dev-certs install. Without them Excel refuses to load the add-in from this machine.',
    );
    process.exit(1);
  }
}

function sideload() {
  const cli = join('node_modules', 'office-addin-debugging', 'cli.js');
  const child = spawn(process.execPath, [cli, 'start', manifest, 'desktop', '--app', 'excel', '--no-debug'], {
    stdio: 'inherit',
  });
  child.on('exit', code => {
    if (code !== 0) console.log(BY_HAND);
  });
}

if (!mayHaveExcel() && !process.argv.includes('--serve')) {
  console.log(BY_HAND);
  console.log('To serve the add-in here all the same: npm run excel -- --serve');
} else {
  const compiler = webpack(webpackConfig({}, { mode: 'development' }));
  const server = { type: 'https', options: await httpsOptions() };
  const headers = { 'Access-Control-Allow-Origin': '*' };
  const devServer = new WebpackDevServer(
    {
      host: 'localhost',
      port: PORT,
      server,
      headers,
      hot: false,
      client: false,
      devMiddleware: { writeToDisk: true, stats: 'errors-warnings' },
      static: false,
    },
    compiler,
  );
  await devServer.start();
  devServer.middleware.waitUntilValid(() => {
    console.log(`The add-in is served at https://localhost:${PORT}. Stop with Ctrl+C.`);
    if (mayHaveExcel()) sideload();
    else console.log(BY_HAND);
  });
}
