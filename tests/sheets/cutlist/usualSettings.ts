import { Decimal } from '../../../src/core/units/decimal';
import type { CutSettings } from '../../../src/sheets/cutlist/cutSettings';

/** What the bench of the tests cuts with, in millimetres. */
export const USUAL_SETTINGS: CutSettings = {
  unit: 'mm',
  step: new Decimal(1),
  kerf: new Decimal(3),
  squaring: new Decimal(20),
  keep: new Decimal(500),
  ageLimitMonths: undefined,
  isOldestFirst: false,
};
