import type { CustomerClass } from './marginTable';
import type { QuoteSettings } from './quoteSettings';

const LABELS = { hose: 'hose', fittings: 'fittings', guards: 'guards', labour: 'labour' } as const;
const percent = (share: number) => `${Number((share * 100).toFixed(2))} %`;

/** Settings that sell below cost, as sentences: they may be meant, and may be a slip of the sign. */
export function belowCost(
  { margin, markups, customerClass }: Pick<QuoteSettings, 'margin' | 'markups' | 'customerClass'>,
  classes: readonly CustomerClass[],
): readonly string[] {
  const ofClass = classes.find(({ name }) => name === customerClass)?.margin;
  const earned = margin ?? ofClass ?? 0;
  return [
    ...(earned < 0 ? [`A margin of ${percent(earned)} sells below cost.`] : []),
    ...(Object.keys(LABELS) as (keyof typeof LABELS)[]).flatMap(part =>
      markups && markups[part] < 0 ? [`A markup of ${percent(markups[part])} on ${LABELS[part]} sells below cost.`] : [],
    ),
  ];
}
