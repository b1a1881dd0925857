import { STEP_PLACES } from '../../core/units/decimalPlaces';
import { useEffect, useState } from 'react';
import type { Catalogue } from '../../core/catalogue/catalogue';
import { machineDescription } from '../../core/catalogue/machineDial';
import { TradeError } from '../../core/tradeError';
import { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { convertMeasure, measureUnit } from '../../core/units/measureUnit';
import type { Workbook } from '../../workbook/workbook';
import { workbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';

function perTurnOf(catalogue: Catalogue, machine: string, unit: LengthUnit): string {
  try {
    const perTurn = machineDescription(catalogue, machine)?.perTurn;
    if (perTurn === undefined) return '';
    const value = convertMeasure(new Decimal(perTurn), catalogue.units.diameter, measureUnit('length', unit)!);
    return value.toDecimalPlaces(STEP_PLACES).toString();
  } catch (error) {
    if (error instanceof TradeError) return '';
    throw error;
  }
}

/** Machines, hoses and fittings of the workbook's catalogue, to be offered; none where it has no catalogue. */
export function useMachines(workbook: Workbook) {
  const [catalogue, setCatalogue] = useState<Catalogue>();
  useEffect(() => {
    let isCurrent = true;
    // Without a catalogue everything can be typed by hand.
    workbookCatalogue(workbook).then(
      found => isCurrent && setCatalogue(found?.catalogue),
      () => undefined,
    );
    return () => {
      isCurrent = false;
    };
  }, [workbook]);
  return {
    names: catalogue ? [...catalogue.index.machines.values()] : [],
    hoses: (catalogue?.hoses ?? []).map(({ hose }) => hose),
    fittings: (catalogue?.fittings ?? []).map(({ fitting }) => fitting),
    /** Change of diameter per turn of the screw as text; "" where Machines does not say. */
    perTurn: (machine: string, unit: LengthUnit) => (catalogue && machine.trim() ? perTurnOf(catalogue, machine, unit) : ''),
  };
}
