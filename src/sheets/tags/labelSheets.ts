/**
 * Common sheets of labels, and single labels as label printers take them.
 * Source: sizes as sold under many names, common practice, from memory: print on plain paper first and lay it over your labels.
 * Unit: mm. `columns` × `rows` labels; `left` and `top` to the first label; `gapX`, `gapY` between labels.
 */
export const labelSheets = [
  {
    id: '3x7',
    name: 'A4, 21 labels 63.5 × 38.1 mm',
    page: [210, 297],
    label: [63.5, 38.1],
    columns: 3,
    rows: 7,
    left: 7.25,
    top: 15.15,
    gapX: 2.5,
    gapY: 0,
  },
  {
    id: '3x8',
    name: 'A4, 24 labels 70 × 37 mm',
    page: [210, 297],
    label: [70, 37],
    columns: 3,
    rows: 8,
    left: 0,
    top: 0.5,
    gapX: 0,
    gapY: 0,
  },
  {
    id: '2x7',
    name: 'A4, 14 labels 99.1 × 38.1 mm',
    page: [210, 297],
    label: [99.1, 38.1],
    columns: 2,
    rows: 7,
    left: 4.65,
    top: 15.15,
    gapX: 2.5,
    gapY: 0,
  },
  {
    id: '4x11',
    name: 'A4, 44 labels 48.5 × 25.4 mm',
    page: [210, 297],
    label: [48.5, 25.4],
    columns: 4,
    rows: 11,
    left: 8,
    top: 8.8,
    gapX: 0,
    gapY: 0,
  },
  {
    id: '3x10',
    name: 'Letter, 30 labels 2 5/8 × 1 in',
    page: [215.9, 279.4],
    label: [66.675, 25.4],
    columns: 3,
    rows: 10,
    left: 4.7625,
    top: 12.7,
    gapX: 3.175,
    gapY: 0,
  },
  {
    id: '2x5',
    name: 'Letter, 10 labels 4 × 2 in',
    page: [215.9, 279.4],
    label: [101.6, 50.8],
    columns: 2,
    rows: 5,
    left: 3.96875,
    top: 12.7,
    gapX: 4.7625,
    gapY: 0,
  },
  {
    id: 'roll62',
    name: 'Roll, one label 62 × 29 mm',
    page: [62, 29],
    label: [62, 29],
    columns: 1,
    rows: 1,
    left: 0,
    top: 0,
    gapX: 0,
    gapY: 0,
  },
  {
    id: 'roll100',
    name: 'Roll, one label 100 × 50 mm',
    page: [100, 50],
    label: [100, 50],
    columns: 1,
    rows: 1,
    left: 0,
    top: 0,
    gapX: 0,
    gapY: 0,
  },
] as const satisfies readonly LabelSheet[];

/** A sheet of labels. */
export interface LabelSheet {
  readonly id: string;
  readonly name: string;
  /** Width and height. */
  readonly page: readonly [number, number];
  readonly label: readonly [number, number];
  readonly columns: number;
  readonly rows: number;
  readonly left: number;
  readonly top: number;
  readonly gapX: number;
  readonly gapY: number;
}

/** Where a label lies: page from 0, and its upper left corner on that page in mm. */
export function labelPlace(
  sheet: LabelSheet,
  position: number,
): { readonly page: number; readonly x: number; readonly y: number } {
  const perPage = sheet.columns * sheet.rows;
  const onPage = position % perPage;
  const round = (value: number) => Math.round(value * 1000) / 1000;
  return {
    page: Math.floor(position / perPage),
    x: round(sheet.left + (onPage % sheet.columns) * (sheet.label[0] + sheet.gapX)),
    y: round(sheet.top + Math.floor(onPage / sheet.columns) * (sheet.label[1] + sheet.gapY)),
  };
}
