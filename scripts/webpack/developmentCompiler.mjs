import webpack from 'webpack';
import webpackConfig from '../../webpack.config.js';

/** The compiler behind a development server: of a build it tells only what is wrong with it. */
export function developmentCompiler() {
  const quiet = { stats: 'none', infrastructureLogging: { level: 'warn' } };
  const compiler = webpack(webpackConfig({}, { mode: 'development' }).map(config => ({ ...config, ...quiet })));
  compiler.hooks.done.tap('development', stats => {
    if (stats.hasErrors() || stats.hasWarnings()) console.error(stats.toString('errors-warnings'));
  });
  return compiler;
}
