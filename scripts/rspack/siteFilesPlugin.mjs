import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Compilation, sources } from '@rspack/core';
import { functionMetadata } from '../functionMetadata.mjs';
import { ICON_SIZES } from '../icons/iconSizes.mjs';
import { filledManifest } from '../filledManifest.mjs';
import { siteHelp } from '../help/siteHelp.mjs';
import { officeJsFiles } from '../officeJsFiles.mjs';

/** The office's catalogue, where somebody has put one into this folder; the pane looks for it beside its page. */
const OFFICE_CATALOGUE = 'catalogue/current.xlsx';

/** Writes what dist/ needs beside the bundles: the metadata of the functions, the manifest, its icons, the office's catalogue, and Office.js when asked for. */
export class SiteFilesPlugin {
  constructor(setting) {
    this.setting = setting;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap('SiteFiles', compilation => {
      const stage = Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tapPromise({ name: 'SiteFiles', stage }, async () => {
        for (const [name, content] of await siteFiles(this.setting)) {
          compilation.emitAsset(name, new sources.RawSource(content));
        }
      });
      compilation.contextDependencies.add(join(this.setting.root, 'src/functions'));
      compilation.contextDependencies.add(join(this.setting.root, 'manifest'));
      const catalogue = join(this.setting.root, OFFICE_CATALOGUE);
      (existsSync(catalogue) ? compilation.fileDependencies : compilation.missingDependencies).add(catalogue);
    });
  }
}

/** Name and content of every such file. */
async function siteFiles({ root, version, baseUrl, localOfficeJs }) {
  const metadata = await functionMetadata(root, baseUrl);
  const catalogue = join(root, OFFICE_CATALOGUE);
  const manifest = readFileSync(join(root, 'manifest/manifest.xml'), 'utf8');
  return [
    ['functions.json', JSON.stringify(metadata, null, 2)],
    ...siteHelp(root, metadata),
    ['manifest.xml', filledManifest(manifest, { baseUrl, version })],
    // Beside a package.json of type "module", Node would take functions.js for a module.
    ['package.json', '{ "type": "commonjs" }\n'],
    ...(existsSync(catalogue) ? [[OFFICE_CATALOGUE, readFileSync(catalogue)]] : []),
    ...ICON_SIZES.map(size => [`icons/${size}.png`, readFileSync(join(root, `manifest/icons/${size}.png`))]),
    ...(localOfficeJs ? officeJsFiles(root) : []).map(({ name, path }) => [`office-js/${name}`, readFileSync(path)]),
  ];
}
