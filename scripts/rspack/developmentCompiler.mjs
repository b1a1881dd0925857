import { rspack } from '@rspack/core';
import rspackConfig from '../../rspack.config.js';

/** The compiler behind a development server: of a build it tells only what is wrong with it. */
export function developmentCompiler() {
  const quiet = { stats: 'none', infrastructureLogging: { level: 'warn' } };
  const compiler = rspack(rspackConfig({}, { mode: 'development' }).map(config => ({ ...config, ...quiet })));
  compiler.hooks.done.tap('development', stats => {
    if (stats.hasErrors() || stats.hasWarnings()) console.error(stats.toString('errors-warnings'));
  });
  return compiler;
}
