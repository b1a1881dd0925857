import type { Catalogue } from '../../core/catalogue/catalogue';
import { partKey } from '../../core/catalogue/partName';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { RangeContent } from '../../workbook/workbook';
import { cellOf, type FoundTable } from '../table/findTable';
import { analyseReadings, type ReadingsAnalysis } from './analyseReadings';
import { catalogueTarget } from '../crimps/catalogueTarget';
import { machineFacts } from './machineFacts';
import type { MeasurementColumns, MeasurementLayout } from '../crimps/measurementRoles';
import type { Measurements } from '../crimps/measurements';
import type { MeasurementsView } from '../crimps/measurementsView';
import { readMeasurements } from '../crimps/readMeasurements';
import { settingsAbove, type SettingsAbove } from '../crimps/settingsAbove';

export type ReadyView = Extract<MeasurementsView, { status: 'ready' }>;

/** What the user said about the table, beyond what it says itself; undefined = as proposed. */
export interface AnalysisChoice {
  readonly layout?: MeasurementLayout | undefined;
  readonly columns?: MeasurementColumns | undefined;
  readonly unit?: LengthUnit | undefined;
  readonly readingsACrimp: number;
  /** Machine of rows that name none. */
  readonly machine: string;
  readonly target?: Decimal | undefined;
  readonly tolerance?: Decimal | undefined;
  readonly largestSpread?: Decimal | undefined;
  readonly uncertainty?: Decimal | undefined;
  readonly step?: Decimal | undefined;
  readonly perTurn?: Decimal | undefined;
}

/** The table as it was read, and what its readings say. */
export interface Analysed {
  readonly measurements: Measurements;
  readonly analysis: ReadingsAnalysis;
  readonly above: SettingsAbove;
  /** What the table is taken for now. */
  readonly layout: MeasurementLayout;
  readonly columns: MeasurementColumns;
  readonly unit: LengthUnit;
}

/** A machine of the catalogue whose name stands above the table. */
function machineAbove(used: RangeContent, { block }: FoundTable, catalogue: Catalogue | undefined): string | undefined {
  if (!catalogue) return undefined;
  for (let row = block.row - 1; row >= used.row; row--) {
    for (let column = used.column; column < used.column + (used.values[0]?.length ?? 0); column++) {
      const cell = cellOf(used, row, column);
      const name = typeof cell === 'string' ? catalogue.index.machines.get(partKey(cell)) : undefined;
      if (name) return name;
    }
  }
  return undefined;
}

/** Reads the table around the selection and says what its readings mean. */
export function analysisOf(view: ReadyView, choice: AnalysisChoice): Analysed {
  const { used, table, catalogue, picked } = view;
  const layout = choice.layout ?? view.proposed.layout;
  const columns = choice.columns ?? view.proposed.columns;
  const unit = choice.unit ?? view.unit;
  const above = settingsAbove(used, table, unit);
  const { target, tolerance, largestSpread, step, perTurn } = choice;
  const measurements = readMeasurements(
    used,
    table,
    { layout, columns },
    {
      unit,
      readingsACrimp: choice.readingsACrimp,
      typed: { target, tolerance, largestSpread },
      above,
      machine: choice.machine || machineAbove(used, table, catalogue),
      setUp: catalogue && catalogueTarget(catalogue, unit),
      picked,
    },
  );
  const factsOf = machineFacts(catalogue, unit, above, { step, perTurn });
  const analysis = analyseReadings(measurements, { uncertainty: choice.uncertainty ?? above.uncertainty, factsOf });
  return { measurements, analysis, above, layout, columns, unit };
}
