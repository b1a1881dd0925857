import { fileURLToPath } from 'node:url';
import MinimizerPlugin from 'minimizer-webpack-plugin';
import webpack from 'webpack';
import { bundle } from './bundle.mjs';
import { SiteFilesPlugin } from './siteFilesPlugin.mjs';

const slimDecimal = { test: /decimal\.js[\\/]decimal\.mjs$/, loader: fileURLToPath(new URL('slimDecimal.mjs', import.meta.url)) };

function usual(setting) {
  const { module, ...rest } = bundle(setting, 'functions');
  return { ...rest, module: { ...module, rules: [...module.rules, slimDecimal] } };
}

/** The worksheet functions: one classic script that needs no DOM to register; and the files that describe them to a host. */
export const functions = setting => ({
  ...usual(setting),
  entry: { functions: './src/functions/register.ts' },
  optimization: {
    // The smallest, not the fastest: every workbook loads it.
    minimizer: [
      new MinimizerPlugin({
        extractComments: false,
        // No function of ours is called with `new` or reads through a getter that does something.
        terserOptions: {
          ecma: 2020,
          compress: { ecma: 2020, passes: 3, unsafe_arrows: true, pure_getters: true },
          format: { ecma: 2020 },
        },
      }),
    ],
  },
  // No worksheet function reads a unit of flow.
  plugins: [
    new SiteFilesPlugin(setting),
    new webpack.NormalModuleReplacementPlugin(/\/flowUnitWords$/, './noFlowUnitWords'),
    // The pane compares it with its own: Excel keeps functions.js for up to a day.
    new webpack.BannerPlugin({ banner: `globalThis.benchrowVersion="${setting.version}"`, raw: true, footer: true }),
  ],
});
