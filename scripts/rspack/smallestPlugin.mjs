import { Compilation, sources } from '@rspack/core';
import { minify } from 'terser';

/** Minifier for a bundle in which bytes count more than time: all of its scripts by terser. */
export class SmallestPlugin {
  /** @param {() => import('terser').MinifyOptions} options asked anew for each script, since terser writes into them */
  constructor(options) {
    this.options = options;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap('Smallest', compilation => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_SIZE;
      compilation.hooks.processAssets.tapPromise({ name: 'Smallest', stage }, async () => {
        for (const { name, source } of compilation.getAssets()) {
          if (!name.endsWith('.js')) continue;
          const { code } = await minify({ [name]: source.source().toString() }, this.options());
          compilation.updateAsset(name, new sources.RawSource(code), { minimized: true });
        }
      });
    });
  }
}
