import type { CrimpVerdict } from '../../core/crimp/crimpVerdict';
import type { Decimal } from '../../core/units/decimal';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { GaugeUse } from '../gauges/gaugeUse';
import type { Piece } from '../pieces/piece';
import type { Instrument } from './instrument';

/** One crimp of a record; what is not known is undefined or "" and is left as a line to write on. Diameters in `unit`. */
export interface RecordCrimp {
  /** Number of the assembly, or of the piece within its line. */
  readonly piece: string;
  readonly end: string;
  readonly order: string;
  readonly assembly: string;
  readonly hose: string;
  readonly hoseLot: string;
  readonly hoseMade: string;
  readonly fitting: string;
  readonly fittingLot: string;
  readonly machine: string;
  readonly die: string;
  readonly dial: string;
  /** Day of the crimp. */
  readonly made: string;
  readonly operator: string;
  readonly target: Decimal | undefined;
  readonly smallest: Decimal | undefined;
  readonly largest: Decimal | undefined;
  /** As many as the sheet has columns for. */
  readonly readings: readonly (Decimal | undefined)[];
  /** Only where all readings are there. */
  readonly mean: Decimal | undefined;
  readonly spread: Decimal | undefined;
  readonly verdict: CrimpVerdict | undefined;
  /** What could not be read. */
  readonly problem: string | undefined;
  /** The piece, or the row of readings; undefined where it is yet to be made. */
  readonly measuredWith: RecordUse | undefined;
}

/** Of a piece also what it was tested with; of readings on another sheet nobody knows more than that the row names a gauge. */
export type RecordUse = GaugeUse & Partial<Pick<Piece, 'testPressure' | 'testedAt'>>;

/** A pressure with its unit. */
export interface Pressure {
  readonly value: Decimal;
  readonly unit: string;
}

/** What one line's record says before the user's own fields. */
export interface InspectionRecord {
  readonly title: string;
  readonly line: string;
  readonly label: string;
  readonly order: string;
  readonly assembly: string;
  /** "" where the sheet does not say. */
  readonly quantity: string;
  readonly hose: string;
  readonly hoseLot: string;
  readonly hoseMade: string;
  readonly unit: LengthUnit;
  readonly workingPressure: Pressure | undefined;
  readonly crimps: readonly RecordCrimp[];
  /** The pieces as the sheet Pieces has them, without those that were scrapped; none where the record is not from there. */
  readonly pieces?: readonly Piece[];
  /** Numbers of the pieces that were scrapped. */
  readonly scrapped?: readonly string[];
  /** What was measured with: each gauge with its resolution and when its check is due. */
  readonly gauges?: readonly string[];
  /** The calipers and gauges that pieces and rows name. */
  readonly instruments?: readonly Instrument[];
  readonly problems: readonly string[];
}

/** What the user writes for all chosen lines; "" = a line to write on. */
export interface RecordFields {
  readonly workshop: string;
  readonly customer: string;
  readonly number: string;
  readonly operator: string;
  readonly machine: string;
  readonly dieSet: string;
  readonly hoseLot: string;
  readonly hoseMade: string;
  readonly fittingLot: string;
  readonly caliper: string;
  readonly caliperChecked: string;
  /** Expanded uncertainty (k = 2) of the mean, in the unit of the readings. */
  readonly uncertainty: string;
  readonly factor: string;
  readonly rule: string;
  readonly hold: string;
  readonly medium: string;
  readonly gauge: string;
  readonly gaugeChecked: string;
  readonly tester: string;
}

export const FRESH_FIELDS: RecordFields = {
  workshop: '',
  customer: '',
  number: '',
  operator: '',
  machine: '',
  dieSet: '',
  hoseLot: '',
  hoseMade: '',
  fittingLot: '',
  caliper: '',
  caliperChecked: '',
  uncertainty: '',
  // ISO 6605:2017, 5.2, as on the bench cards.
  factor: '2',
  rule: 'ISO 6605:2017, 5.2',
  hold: '',
  medium: '',
  gauge: '',
  gaugeChecked: '',
  tester: '',
};

/** What the proof test showed: `none`, `found`, or "" = not noted. Never kept for the next line. */
export interface TestResult {
  readonly leak: string;
  readonly slip: string;
  readonly twist: string;
}

export const NOT_NOTED: TestResult = { leak: '', slip: '', twist: '' };

/** Everything that is printed or written. */
export interface RecordOptions {
  readonly fields: RecordFields;
  readonly result: TestResult;
  /** Handle of the catalogue; "" where there is none. */
  readonly handle: string;
  /** Sheets that the data come from. */
  readonly source: string;
  readonly today: string;
}
