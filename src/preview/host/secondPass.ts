import type { Univer } from '@univerjs/core';
import { IFormulaCurrentConfigService } from '@univerjs/engine-formula';

/** What the engine is to calculate; it declares the order to calculate everything private. */
interface CalculationOrder {
  _forceCalculate: boolean;
  loadDirtyRangesAndExcludedCell: (...given: readonly unknown[]) => void;
}

/**
 * Lets the engine calculate every formula once. Where formulas fill further cells it passes through them a second time, for those that read
 * the filled cells; ordered to calculate everything, it would do all of them again.
 */
export function secondPass(univer: Univer): void {
  const order = univer.__getInjector().get(IFormulaCurrentConfigService) as unknown as CalculationOrder;
  const load = order.loadDirtyRangesAndExcludedCell.bind(order);
  order.loadDirtyRangesAndExcludedCell = (...given) => {
    load(...given);
    order._forceCalculate = false;
  };
}
