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
  output: { path: setting.dist, filename: '[name].js', publicPath: 'auto' },
  resolve: { extensions: ['.ts', '.tsx', '.js', '.mjs'] },
  performance: { hints: false },
  module: {
    rules: [
      { test: /\.tsx?$/, loader: 'ts-loader', options: { transpileOnly: true } },
      { test: /\.css$/, use: ['style-loader', 'css-loader'] },
    ],
  },
});
