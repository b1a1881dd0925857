import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { rspack, type Configuration, type Stats } from '@rspack/core';

const PAGE = `<!doctype html><html lang="en"><head><meta charset="utf-8" /><title>Bare</title>
<style>html, body, #sheet { height: 100%; margin: 0 } #sheet { width: calc(100% - 360px) }</style><script defer src="barepage.js"></script></head>
<body><div id="sheet"></div></body></html>`;

/** Builds the bare page into a folder below dist/, with the cells it shows. */
export async function buildBarePage(root: string, folder: string, cells: unknown): Promise<void> {
  // Plain modules of Node, without types.
  const { bundle, withoutHyphenation } = await import('../../scripts/rspack/bundle.mjs' as string);
  const setting = { dist: folder, mode: 'production' };
  const config: Configuration = {
    ...bundle(setting, 'barepage'),
    context: root,
    entry: { barepage: join(root, 'bench/page/barePage.ts') },
    // As the try-out page does: no hyphenation.
    plugins: [withoutHyphenation()],
  };
  const stats = await new Promise<Stats | undefined>((done, fail) =>
    rspack(config, (error, result) => (error ? fail(error) : done(result))),
  );
  if (stats?.hasErrors()) throw new Error(stats.toString('errors-warnings'));
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'barepage.html'), PAGE);
  writeFileSync(join(folder, 'cells.json'), JSON.stringify(cells));
}
