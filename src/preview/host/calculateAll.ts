import { LifecycleStages } from '@univerjs/core';
import type { FUniver } from '@univerjs/core/facade';

/** Resolves when the page is drawn; the engine takes no order to calculate before. Without a page there is nothing to wait for. */
function drawn(api: FUniver, hasPage: boolean): Promise<void> {
  if (!hasPage || api.getCurrentLifecycleStage() >= LifecycleStages.Rendered) return Promise.resolve();
  return new Promise(resolve => {
    const subscription = api.addEvent(api.Event.LifeCycleChanged, ({ stage }) => {
      if (stage < LifecycleStages.Rendered) return;
      subscription.dispose();
      resolve();
    });
  });
}

/** Calculates every formula of the open workbook; resolves when the results stand in the cells. */
export async function calculateAll(api: FUniver, hasPage: boolean): Promise<void> {
  await drawn(api, hasPage);
  const formula = api.getFormula();
  await new Promise<void>(resolve => {
    // An earlier calculation, of nothing, may end first.
    let isOurs = false;
    const started = formula.calculationStart(force => (isOurs ||= force));
    const ended = formula.calculationEnd(() => {
      if (!isOurs) return;
      started.dispose();
      ended.dispose();
      // The results are written into the cells after this event.
      setTimeout(resolve, 0);
    });
    formula.executeCalculation();
  });
}
