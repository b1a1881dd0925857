// Draws manifest/icons: node scripts/icons/draw.mjs
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ICON_SIZES } from './iconSizes.mjs';
import { markPixels } from './mark.mjs';
import { png } from './png.mjs';

const folder = join(dirname(fileURLToPath(import.meta.url)), '../../manifest/icons');
mkdirSync(folder, { recursive: true });
for (const size of ICON_SIZES) writeFileSync(join(folder, `${size}.png`), png(size, markPixels(size)));
