import { bundle } from './bundle.mjs';
import { SiteFilesPlugin } from './siteFilesPlugin.mjs';

/** The worksheet functions: one classic script that needs no DOM to register; and the files that describe them to a host. */
export const functions = setting => ({
  ...bundle(setting, 'functions'),
  entry: { functions: './src/functions/register.ts' },
  plugins: [new SiteFilesPlugin(setting)],
});
