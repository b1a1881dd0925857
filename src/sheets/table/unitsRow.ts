import { anyMeasureUnit } from '../../core/units/measureUnit';

/** What things are counted in, and a stroke where nothing is. */
const COUNTED = /^(?:pcs?\.?|pieces?|ea\.?|each|no\.?|off|qty\.?|#|[-–—])$/i;
/** Signs and codes of currencies, and what a price is of: `EUR`, `€/m`, `USD per ft`. Source of the codes: ISO 4217. */
const CURRENCY =
  /^(?:[€$£¥₹]|EUR|USD|GBP|CHF|CAD|AUD|NZD|JPY|CNY|INR|SEK|NOK|DKK|PLN|CZK|HUF|RON|TRY|ZAR|BRL|MXN|SGD|HKD|KRW|AED|Fr\.?|kr\.?)(?:\s*(?:\/|per)\s*\p{L}+\.?)?$/iu;

/** True where nothing but units stands in a row, as below headings: `mm`, `pcs`, `EUR/m`; blank texts say nothing. */
export function areUnits(texts: readonly string[]): boolean {
  const bare = texts.filter(Boolean).map(text => text.replace(/^[([](.*)[)\]]$/, '$1'));
  return (
    bare.some(text => anyMeasureUnit(text)) &&
    bare.every(text => COUNTED.test(text) || CURRENCY.test(text) || anyMeasureUnit(text) !== undefined)
  );
}
