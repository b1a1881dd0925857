import { splitHeading } from '../../core/units/headingUnit';
import type { RawTable } from '../../core/catalogue/rawTable';

/** Headings as they came → headings that are understood, with their unit: `Einpresstiefe` → `Insertion depth (mm)`. */
export type HeadingMap = ReadonlyMap<string, string>;

/** The table with its headings replaced as the user mapped them; a unit in the old heading stays where the new one has none. */
export function mapHeadings(table: RawTable, map: HeadingMap): RawTable {
  const [header, ...rows] = table;
  if (!header) return table;
  const mapped = header.map(cell => {
    const wanted = typeof cell === 'string' ? map.get(cell.trim()) : undefined;
    if (wanted === undefined) return cell;
    const { bracket } = splitHeading(String(cell));
    return bracket && splitHeading(wanted).bracket === undefined ? `${wanted} (${bracket})` : wanted;
  });
  return [mapped, ...rows];
}
