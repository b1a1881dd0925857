import { fixedReference } from '../../workbook/a1';
import type { MarginTable } from './marginTable';
import type { QuoteLayout, QuoteSetting } from './quoteLayout';
import type { QuoteSettings } from './quoteSettings';

/** What the prices of a quote rest on beside the costs. */
export interface QuoteTerms {
  readonly settings: QuoteSettings;
  readonly margins: MarginTable | undefined;
  /** Cell of the rate `minimum charge`, as a formula names it. */
  readonly minimumRate: string | undefined;
}

type SettingCells = Readonly<Partial<Record<QuoteSetting, string | number>>>;

/** What stands in the cells of the settings: numbers, or formulas with `=` that look them up where the user keeps them. */
export function settingFormulas({ settings, margins, minimumRate }: QuoteTerms, layout: QuoteLayout): SettingCells {
  const { customerClass, margin, markups } = settings;
  const lookUp =
    margins && customerClass !== undefined
      ? `=INDEX(${fixedReference(margins.margins)},MATCH(${layout.setting('costs', 'customerClass')},${fixedReference(margins.names)},0))`
      : margin;
  return {
    customerClass: customerClass ?? '',
    margin: lookUp,
    markupHose: markups?.hose,
    markupFittings: markups?.fittings,
    markupGuards: markups?.guards,
    markupLabour: markups?.labour,
    roundTo: settings.roundTo,
    least: settings.least ?? 0,
    callOut: settings.callOut ?? 0,
    minimumCharge: settings.minimumCharge ?? (minimumRate && `=${minimumRate}`) ?? 0,
    validDays: settings.validDays,
  };
}
