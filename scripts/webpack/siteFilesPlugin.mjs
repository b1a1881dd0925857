import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import webpack from 'webpack';
import { functionMetadata } from '../functionMetadata.mjs';
import { ICON_SIZES } from '../icons/iconSizes.mjs';
import { filledManifest } from '../filledManifest.mjs';
import { helpPage } from '../helpPage.mjs';
import { officeJsFiles } from '../officeJsFiles.mjs';

/** Writes what dist/ needs beside the bundles: the metadata of the functions, the manifest, its icons, and Office.js when asked for. */
export class SiteFilesPlugin {
  constructor(setting) {
    this.setting = setting;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap('SiteFiles', compilation => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tapPromise({ name: 'SiteFiles', stage }, async () => {
        for (const [name, content] of await siteFiles(this.setting)) {
          compilation.emitAsset(name, new webpack.sources.RawSource(content));
        }
      });
      compilation.contextDependencies.add(join(this.setting.root, 'src/functions'));
      compilation.contextDependencies.add(join(this.setting.root, 'manifest'));
    });
  }
}

/** Name and content of every such file. */
async function siteFiles({ root, version, baseUrl, localOfficeJs }) {
  const metadata = await functionMetadata(root, baseUrl);
  const manifest = readFileSync(join(root, 'manifest/manifest.xml'), 'utf8');
  return [
    ['functions.json', JSON.stringify(metadata, null, 2)],
    ['help.html', helpPage(root, metadata)],
    ['manifest.xml', filledManifest(manifest, { baseUrl, version })],
    // Beside a package.json of type "module", Node would take functions.js for a module.
    ['package.json', '{ "type": "commonjs" }\n'],
    ...ICON_SIZES.map(size => [`icons/${size}.png`, readFileSync(join(root, `manifest/icons/${size}.png`))]),
    ...(localOfficeJs ? officeJsFiles(root) : []).map(({ name, path }) => [`office-js/${name}`, readFileSync(path)]),
  ];
}
