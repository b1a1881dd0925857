import { Decimal } from './decimal';
import { FOOT, GALLON, INCH, LITRE, unit, type UnitWords } from './listedUnit';

/** Quantities of what flows through a hose: they stand in sheets and fields. */
export type FlowQuantity = 'volume' | 'flow' | 'velocity' | 'viscosity';

/** The part of the list of unit words that only sheets and fields need: the bundle of the worksheet functions is built without it. */
export const FLOW_UNIT_WORDS: Readonly<Record<FlowQuantity, readonly UnitWords[]>> = {
  volume: [
    unit('L', LITRE, 'litre|litres|liter|liters'),
    unit('mL', LITRE.div(1000), 'millilitre|millilitres|milliliter|milliliters|cm³|cm3|cc'),
    unit('m³', 1, 'm3'),
    unit('gal', GALLON, 'gallon|gallons|us gal|us gallon|us gallons'),
    unit('in³', INCH.times(INCH).times(INCH), 'in3|cu in|cubic inch|cubic inches'),
  ],
  flow: [
    unit('L/min', LITRE.div(60), 'lpm|litre/min|litres/min|liter/min|liters/min|litres/minute|liters/minute|l/minute'),
    unit('L/s', LITRE, 'litres/s|liters/s|litres/second|liters/second'),
    unit('m³/h', new Decimal(1).div(3600), 'm3/h|m³/hr|m3/hr'),
    unit('gpm', GALLON.div(60), 'us gpm|gal/min|gallons/min|gallons/minute|us gal/min'),
  ],
  velocity: [unit('m/s', 1, 'metres/second|meters/second|m/sec'), unit('ft/s', FOOT, 'fps|ft/sec|feet/second')],
  viscosity: [unit('mm²/s', '0.000001', 'mm2/s|cst|centistoke|centistokes')],
};
