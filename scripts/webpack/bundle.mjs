import MinimizerPlugin from 'minimizer-webpack-plugin';

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
    // Several times as fast as the usual minifier. Notices stay where they are; licences.txt has the licences in full.
    minimizer: [new MinimizerPlugin({ minify: MinimizerPlugin.swcMinify, extractComments: false })],
  },
  module: {
    rules: [
      { test: /\.tsx?$/, loader: 'ts-loader', options: { transpileOnly: true } },
      { test: /\.css$/, use: ['style-loader', 'css-loader'] },
    ],
  },
});
