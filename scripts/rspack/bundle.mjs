import { rspack } from '@rspack/core';

/** Compiled as `tsconfig.json` says; types are checked by themselves. */
const compiledFrom = tsx => ({
  loader: 'builtin:swc-loader',
  options: {
    jsc: {
      parser: { syntax: 'typescript', tsx },
      target: 'es2020',
      transform: { react: { runtime: 'automatic' }, useDefineForClassFields: false },
    },
  },
});

/**
 * What all bundles have in common.
 * @param {ReturnType<import('./setting.mjs').buildSetting>} setting
 * @param {string} name of the bundle
 */
export const bundle = (setting, name) => ({
  name,
  mode: setting.mode,
  target: ['web', 'es2020'],
  devtool: setting.mode === 'production' ? false : 'source-map',
  output: {
    path: setting.dist,
    filename: '[name].js',
    // Several bundles stand on one page and in one folder: neither their parts' files nor their registers may be taken for each other's.
    chunkFilename: `${name}-[name].js`,
    uniqueName: `benchrow-${name}`,
    publicPath: 'auto',
  },
  resolve: { extensions: ['.ts', '.tsx', '.js', '.mjs'] },
  performance: { hints: false },
  optimization: {
    // Notices stay where they are; licences.txt has the licences in full.
    minimizer: [new rspack.SwcJsMinimizerRspackPlugin({ extractComments: false })],
  },
  module: {
    rules: [
      { test: /\.ts$/, use: compiledFrom(false) },
      { test: /\.tsx$/, use: compiledFrom(true) },
      // Styles come with the script that needs them.
      { test: /\.css$/, type: 'css', parser: { exportType: 'style' } },
    ],
  },
});

/** Leaves out the spreadsheet library's hyphenation of 76 languages, each a file of its own; cells are not hyphenated. */
export const withoutHyphenation = () =>
  new rspack.IgnorePlugin({
    resourceRegExp: /^\.\/(?!en-)[a-z]{2,3}(-[a-z0-9]+)*-[\w-]{8}\.js$/,
    contextRegExp: /engine-render/,
  });
