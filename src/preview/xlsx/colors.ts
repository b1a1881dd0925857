import type { Color } from 'exceljs';

/** The twelve colours of the standard theme, in the order a file's theme index counts (light 1, dark 1, light 2, dark 2, accents, links). */
const THEME = [
  'FFFFFF',
  '000000',
  'E7E6E6',
  '44546A',
  '4472C4',
  'ED7D31',
  'A5A5A5',
  'FFC000',
  '5B9BD5',
  '70AD47',
  '0563C1',
  '954F72',
];

function tinted(rgb: string, tint: number): string {
  const part = (from: number) => {
    const value = parseInt(rgb.slice(from, from + 2), 16);
    const moved = tint < 0 ? value * (1 + tint) : value + (255 - value) * tint;
    return Math.round(moved).toString(16).padStart(2, '0').toUpperCase();
  };
  return `${part(0)}${part(2)}${part(4)}`;
}

/** A file's colour as `#RRGGBB`; theme colours are taken from the standard theme, others unknown give undefined. */
export function hexColor(color: Partial<Color> | undefined): string | undefined {
  if (!color) return undefined;
  if (typeof color.argb === 'string') return `#${color.argb.slice(-6).toUpperCase()}`;
  const { theme, tint } = color as { theme?: number; tint?: number };
  const rgb = theme === undefined ? undefined : THEME[theme];
  return rgb && `#${tinted(rgb, tint ?? 0)}`;
}

/** `#RRGGBB` (or `#RGB`, `rgb(r,g,b)`) as a file's colour. */
export function fileColor(css: string): Partial<Color> | undefined {
  const rgb = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(css);
  const hex = rgb
    ? rgb
        .slice(1, 4)
        .map(part => Number(part).toString(16).padStart(2, '0'))
        .join('')
    : css.replace('#', '');
  const full = hex.length === 3 ? [...hex].map(digit => digit + digit).join('') : hex;
  return /^[0-9a-f]{6}$/i.test(full) ? { argb: `FF${full.toUpperCase()}` } : undefined;
}
