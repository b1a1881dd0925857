import { dirname, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import CopyPlugin from 'copy-webpack-plugin';
import HtmlPlugin from 'html-webpack-plugin';
import webpack from 'webpack';
import { functionMetadata } from './scripts/functionMetadata.mjs';

const root = dirname(fileURLToPath(import.meta.url));
const baseUrl = (process.env.BASE_URL ?? 'https://localhost:3000').replace(/\/+$/, '');

/** Writes dist/functions.json from the JSDoc of the worksheet functions. */
class FunctionMetadataPlugin {
  apply(compiler) {
    compiler.hooks.thisCompilation.tap('FunctionMetadata', compilation => {
      const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tapPromise({ name: 'FunctionMetadata', stage }, async () => {
        const metadata = await functionMetadata(root, baseUrl);
        compilation.emitAsset('functions.json', new webpack.sources.RawSource(JSON.stringify(metadata, null, 2)));
      });
    });
  }
}

const shared = mode => ({
  mode,
  devtool: mode === 'production' ? false : 'source-map',
  resolve: { extensions: ['.ts', '.tsx', '.js', '.mjs'] },
  performance: { hints: false },
  module: {
    rules: [
      { test: /\.tsx?$/, loader: 'ts-loader', options: { transpileOnly: true } },
      { test: /\.css$/, use: ['style-loader', 'css-loader'] },
    ],
  },
});

/** The worksheet functions: one classic script that needs no DOM to register. */
const functions = mode => ({
  ...shared(mode),
  name: 'functions',
  entry: { functions: './src/functions/register.ts' },
  target: ['web', 'es2020'],
  output: { path: resolve(root, 'dist'), filename: '[name].js', publicPath: '' },
  plugins: [new FunctionMetadataPlugin()],
});

export default (env, argv) => [functions(argv.mode ?? 'production')];
void CopyPlugin;
void HtmlPlugin;
