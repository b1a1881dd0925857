import { TradeError } from '../tradeError';
import type { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { crimpOrReason } from './crimpFor';
import { findHose } from './findPart';
import { partKey } from './partName';
import type { Fitting } from './tables/fittingsTable';

const key = (text: string) =>
  partKey(text)
    .replace(/[º˚]|\s*deg(?:rees?)?\b/g, '°')
    .replace(/\s+/g, ' ');

function isOfForm(fitting: Fitting, wanted: string): boolean {
  const endForm = key(fitting.endForm);
  return endForm === wanted || (fitting.series !== undefined && `${endForm} ${key(fitting.series)}` === wanted);
}

/** Whether a fitting has an end form, as in the catalogue or with the series behind it; without case. */
export const hasEndForm = (fitting: Fitting, endForm: string): boolean => isOfForm(fitting, key(endForm));

/**
 * Fittings of an end form that have crimp data for a hose, in the catalogue's order.
 * @param endForm as in the catalogue, or with the series behind it (`24° cone L`); without case
 * @param angle in degrees, 0 = straight; undefined = any
 * @throws TradeError `notFound` for an unknown hose, or where there is none
 */
export function findFittings(catalogue: Catalogue, hose: string, endForm: string, angle?: Decimal): readonly Fitting[] {
  findHose(catalogue, hose);
  const wanted = key(endForm);
  const found = catalogue.fittings.filter(
    fitting =>
      isOfForm(fitting, wanted) &&
      (angle === undefined || (fitting.angle !== undefined && angle.eq(fitting.angle))) &&
      typeof crimpOrReason(catalogue, hose, fitting.fitting) !== 'string',
  );
  if (found.length > 0) return found;
  const received = `no fitting "${endForm.trim()}"${angle === undefined ? '' : ` of ${angle}°`} has crimp data for ${hose.trim()}`;
  const forms = [...new Set(catalogue.fittings.map(fitting => fitting.endForm))].slice(0, 12);
  throw new TradeError(
    'notFound',
    '',
    received,
    forms.length > 0 ? `end forms are ${forms.join(', ')}` : 'there are no fittings',
  );
}
