import { assembly } from '../../core/catalogue/assembly';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { crimpSetup } from '../../core/catalogue/crimpSetup';
import { findFitting } from '../../core/catalogue/findPart';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { convertMeasure, measureUnit, type MeasureUnit } from '../../core/units/measureUnit';
import type { CrimpLookUp } from './crimpLookUp';

/** Digits behind the point that a converted small length keeps. */
const PLACES = { mm: 2, in: 4 } as const;

/** Look-ups of bench cards in a catalogue; a machine's own recorded dials win. */
export function catalogueLookUp(catalogue: Catalogue, machine?: string): CrimpLookUp {
  const { units } = catalogue;
  const length = (value: number | undefined, from: MeasureUnit, unit: LengthUnit): Decimal | undefined => {
    if (value === undefined) return undefined;
    const to = measureUnit('length', unit)!;
    return from.symbol === to.symbol
      ? new Decimal(value)
      : convertMeasure(new Decimal(value), from, to).toDecimalPlaces(PLACES[unit]);
  };
  return {
    handle: catalogue.handle,
    crimp(hose, fitting, unit) {
      const { die, dial, crimpDiameter, tolerance, insertionDepth, source, matched, crimp, notes } = crimpSetup(
        catalogue,
        hose,
        fitting,
        machine,
      );
      const diameter = length(crimpDiameter, units.diameter, unit)!;
      const around = length(tolerance, units.diameter, unit)!;
      return {
        ferrule: crimp.ferrule,
        die,
        dial: dial === undefined ? undefined : String(dial),
        diameter,
        smallest: diameter.minus(around),
        largest: diameter.plus(around),
        crimpLength: length(crimp.crimpLength, units.length, unit),
        skiveOutside: length(crimp.skiveOutside, units.length, unit),
        skiveInside: length(crimp.skiveInside, units.length, unit),
        insertionDepth: length(insertionDepth, units.length, unit),
        angle: findFitting(catalogue, fitting).angle,
        remark: [crimp.note, ...notes].filter(Boolean).join('; ') || undefined,
        source: `${{ MACHINE: `dial of ${machine}, else catalogue`, CATALOGUE: 'catalogue', 'NO DIAL': `catalogue, no dial for ${machine}` }[source]}, row ${matched}`,
      };
    },
    assembly(hose, fittingA, fittingB, overall, unit) {
      const converted = convertMeasure(overall, measureUnit('length', unit)!, units.length);
      const { workingPressure, wrong } = assembly(catalogue, hose, fittingA, fittingB, converted);
      return {
        workingPressure:
          workingPressure === undefined ? undefined : { value: new Decimal(workingPressure), unit: units.pressure.symbol },
        wrong,
      };
    },
  };
}
