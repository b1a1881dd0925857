import { useMemo } from 'react';
import type { Workbook } from '../../workbook/workbook';
import { useSettledView } from '../controls/useSettledView';
import { marginsOfWorkbook } from '../../sheets/quote/marginTable';
import { priceFormat } from '../../sheets/catalogue/priceFormat';
import type { QuoteSources } from '../../sheets/quote/writeQuote';

type SourcesView = { readonly status: 'ready' } & QuoteSources;

const NONE: QuoteSources = { margins: undefined, format: undefined };

/**
 * Reads what a quote takes from the workbook, and only what a move of the selection can have changed: margins when sheets come or go, or when the
 * sheet that holds them was selected; the format in each sheet.
 */
class SourcesReader {
  private names = '';
  private sheet = '';
  private last: SourcesView = { status: 'ready', ...NONE };

  constructor(private readonly workbook: Workbook) {}

  readonly read = async (): Promise<SourcesView> => {
    const { workbook } = this;
    const names = (await workbook.sheets()).join('\n');
    const { sheet } = await workbook.selection();
    if (names === this.names && sheet === this.sheet) return this.last;
    const held = this.last.margins?.names.sheet;
    const isSame = names === this.names && held !== sheet && held !== this.sheet;
    const margins = isSame ? this.last.margins : await marginsOfWorkbook(workbook);
    this.last = { status: 'ready', margins, format: await priceFormat(workbook) };
    [this.names, this.sheet] = [names, sheet];
    return this.last;
  };

  forget(): void {
    this.names = '';
  }
}

/** What the workbook gives to a quote, as the selection moves on; and how to look at all of it again. */
export function useQuoteSources(workbook: Workbook): readonly [sources: QuoteSources, look: () => void] {
  const reader = useMemo(() => new SourcesReader(workbook), [workbook]);
  const { view, refresh } = useSettledView<SourcesView>(workbook, reader.read);
  const look = () => {
    reader.forget();
    refresh();
  };
  return [view.status === 'ready' ? view : NONE, look];
}
