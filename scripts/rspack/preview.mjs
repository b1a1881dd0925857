import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { rspack } from '@rspack/core';
import { tryOutPolicy } from '../contentSecurity.mjs';
import { bundle, withoutHyphenation } from './bundle.mjs';

/** Sample workbooks that exist. */
function sampleFiles(root) {
  const folder = join(root, 'samples');
  return existsSync(folder) ? readdirSync(folder).filter(name => name.endsWith('.xlsx')) : [];
}

/**
 * The try-out page: a script that puts a CustomFunctions object on the page, and the page itself, whose heavy parts (spreadsheet,
 * .xlsx library, task pane) load when they are needed.
 * @param {ReturnType<import('./setting.mjs').buildSetting>} setting
 */
export const preview = ({ root, ...setting }) => {
  const shared = bundle(setting, 'preview');
  return {
    ...shared,
    entry: { previewhost: './src/preview/host/pageGlobal.ts', preview: './src/preview/index.tsx' },
    // Async chunks only: functions.js and the two entries stay plain scripts that the page names itself.
    optimization: { ...shared.optimization, splitChunks: { chunks: 'async' } },
    plugins: [
      withoutHyphenation(),
      new rspack.DefinePlugin({ SAMPLE_FILES: JSON.stringify(sampleFiles(root)) }),
      new rspack.HtmlRspackPlugin({
        filename: 'preview.html',
        template: './src/preview/preview.html',
        inject: false,
        templateParameters: { policy: tryOutPolicy },
      }),
      new rspack.CopyRspackPlugin({
        patterns: [{ from: '*.xlsx', to: 'samples/', context: join(root, 'samples'), noErrorOnMissing: true }],
      }),
    ],
  };
};
