import { quotedText, shownText } from '../quotedText';
import { TradeError } from '../tradeError';
import type { Decimal } from '../units/decimal';
import type { Catalogue } from './catalogue';
import { crimpOrReason } from './crimpFor';
import { isEndForm } from './endFormWords';
import { findHose } from './findPart';
import type { Fitting } from './tables/fittingsTable';

/** Whether a fitting has an end form, as in the catalogue, with the series behind it, or by a short word (JIC, ORFS); without case. */
export const hasEndForm = ({ endForm, series }: Fitting, wanted: string): boolean => isEndForm(endForm, series, wanted);

/**
 * Fittings of an end form that have crimp data for a hose, in the catalogue's order.
 * @param endForm as in the catalogue, with the series behind it (`24° cone L`), or a short word (JIC, ORFS, BSP, DKOL, DKOS, SAE flange); without case
 * @param angle in degrees, 0 = straight; undefined = any
 * @throws TradeError `notFound` for an unknown hose, or where there is none
 */
export function findFittings(catalogue: Catalogue, hose: string, endForm: string, angle?: Decimal): readonly Fitting[] {
  findHose(catalogue, hose);
  const found = catalogue.fittings.filter(
    fitting =>
      hasEndForm(fitting, endForm) &&
      (angle === undefined || (fitting.angle !== undefined && angle.eq(fitting.angle))) &&
      typeof crimpOrReason(catalogue, hose, fitting.fitting) !== 'string',
  );
  if (found.length > 0) return found;
  const received = `no fitting ${quotedText(endForm)}${angle === undefined ? '' : ` of ${angle}°`} has crimp data for ${shownText(hose)}`;
  const forms = [...new Set(catalogue.fittings.map(fitting => fitting.endForm))].slice(0, 12);
  throw new TradeError(
    'notFound',
    '',
    received,
    forms.length > 0 ? `end forms are ${forms.join(', ')}` : 'there are no fittings',
  );
}
