import { setPage } from '../../../src/host/excel/setPage';

/** What setPage touches of a worksheet; everything is written, nothing read. */
function sheet() {
  const calls: string[] = [];
  const pageLayout: Record<string, unknown> = {
    setPrintArea: (area: string) => calls.push(`area ${area}`),
    setPrintTitleRows: (rows: string) => calls.push(`titles ${rows}`),
    setPrintTitleColumns: (columns: string) => calls.push(`titles ${columns}`),
  };
  const horizontalPageBreaks = { add: (cell: string) => calls.push(`break ${cell}`) };
  return { calls, pageLayout, worksheet: { pageLayout, horizontalPageBreaks } as unknown as Excel.Worksheet };
}

function openExcel(): void {
  Object.assign(globalThis, {
    Excel: { PageOrientation: { landscape: 'Landscape', portrait: 'Portrait' } },
  });
}

const page = {
  orientation: 'landscape',
  printArea: 'A1:L20',
  titleRows: '5:5',
  titleColumns: 'A:AB',
  fitWidth: true,
  margin: 28,
  breaksBefore: [11, 31],
} as const;

test('print area, title rows and columns, breaks, orientation, margins and scale go to Excel', () => {
  openExcel();
  const { calls, pageLayout, worksheet } = sheet();
  setPage(worksheet, page);
  expect(calls).toEqual(['area A1:L20', 'titles $5:$5', 'titles $A:$AB', 'break A11', 'break A31']);
  expect(pageLayout).toMatchObject({
    orientation: 'Landscape',
    zoom: { horizontalFitToPages: 1 },
    leftMargin: 28,
    bottomMargin: 28,
  });
});

test('a scale of its own instead, so that breaks count', () => {
  openExcel();
  const { pageLayout, worksheet } = sheet();
  setPage(worksheet, { scale: 74, breaksBefore: [9] });
  expect(pageLayout.zoom).toEqual({ scale: 74 });
});
