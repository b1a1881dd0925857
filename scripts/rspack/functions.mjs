import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { rspack } from '@rspack/core';
import { bundle } from './bundle.mjs';
import { shortNames, smallLetters } from './shortNames.mjs';
import { SiteFilesPlugin } from './siteFilesPlugin.mjs';
import { SmallestPlugin } from './smallestPlugin.mjs';

// The minifier loses it with the statement it stands at.
const [DECIMAL_NOTICE] = readFileSync(fileURLToPath(import.meta.resolve('decimal.js/decimal.mjs')), 'utf8').match(
  /^\/\*![^]*?\*\//,
);

const slimDecimal = { test: /decimal\.js[\\/]decimal\.mjs$/, loader: fileURLToPath(new URL('slimDecimal.mjs', import.meta.url)) };

const compiled = { test: /\.ts$/, loader: fileURLToPath(new URL('compactTypeScript.mjs', import.meta.url)) };

/** The smallest, not the fastest: every workbook loads it. */
function smallest() {
  const names = shortNames();
  return {
    ecma: 2020,
    // No function of ours is called with `new` or reads through a getter that does something.
    compress: { ecma: 2020, passes: 6, unsafe_arrows: true, pure_getters: true, hoist_vars: true },
    format: { ecma: 2020 },
    mangle: {
      nth_identifier: smallLetters,
      properties: { builtins: true, keep_quoted: true, regex: new RegExp(`^(?:${[...names.keys()].join('|')})$`) },
    },
    nameCache: { props: { props: Object.fromEntries([...names].map(([name, short]) => [`$${name}`, short])) } },
  };
}

/** The worksheet functions: one classic script that needs no DOM to register; and the files that describe them to a host. */
export const functions = setting => ({
  ...bundle(setting, 'functions'),
  module: { rules: [compiled, slimDecimal] },
  entry: { functions: './src/functions/register.ts' },
  optimization: { minimizer: [new SmallestPlugin(smallest)] },
  plugins: [
    new SiteFilesPlugin(setting),
    new rspack.BannerPlugin({ banner: DECIMAL_NOTICE, raw: true }),
    // No worksheet function reads a unit of flow.
    new rspack.NormalModuleReplacementPlugin(/\/flowUnitWords$/, './noFlowUnitWords'),
    // The pane compares it with its own: Excel keeps functions.js for up to a day.
    new rspack.BannerPlugin({ banner: `globalThis.benchrowVersion="${setting.version}"`, raw: true, footer: true }),
  ],
});
