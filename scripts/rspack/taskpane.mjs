import { rspack } from '@rspack/core';
import { panePolicy } from '../contentSecurity.mjs';
import { officeJsUrl } from '../officeJsFiles.mjs';
import { bundle } from './bundle.mjs';

/** The task pane, which is also the page of the shared runtime: office.js, then functions.js, then the pane. */
export const taskpane = setting => ({
  ...bundle(setting, 'taskpane'),
  entry: { taskpane: './src/taskpane/app/index.tsx' },
  plugins: [
    new rspack.DefinePlugin({ VERSION: JSON.stringify(setting.version) }),
    new rspack.HtmlRspackPlugin({
      template: './src/taskpane/app/taskpane.html',
      filename: 'taskpane.html',
      templateParameters: { officeJs: officeJsUrl(setting.localOfficeJs), policy: panePolicy(setting.localOfficeJs) },
      scriptLoading: 'blocking',
      inject: 'body',
    }),
  ],
});
