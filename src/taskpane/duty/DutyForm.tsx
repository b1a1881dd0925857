import { Field, Input, makeStyles, Radio, RadioGroup, Select, Subtitle2, tokens } from '@fluentui/react-components';
import { useId, type ReactNode } from 'react';
import { ISO_VISCOSITY_GRADES } from '../../core/tables/isoViscosityGrades';
import { inUnits, TYPED, type DutyField, type DutyText } from './dutyFields';
import { UNITS_OF } from './dutyUnits';
import { RouteFields } from './RouteFields';

const useStyles = makeStyles({
  form: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalL },
  part: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(128px, 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  wide: { gridColumn: '1 / -1' },
});

interface Props {
  readonly fields: DutyText;
  readonly mistakes: Readonly<Record<string, string>>;
  /** True once hoses were asked for: blank fields are mistakes from then on. */
  readonly isAsked: boolean;
  readonly endForms: readonly string[];
  readonly fluids: readonly string[];
  readonly onFields: (change: Partial<DutyText>) => void;
}

/** Recommended velocities in flexible hoses, as a hint only. Source: Rabie, Fluid Power Engineering (2009), section 3.3. */
const USUAL_VELOCITY = {
  metric: 'Rabie, Fluid Power Engineering, 3.3: 2.1 to 4.6 in pressure lines, 0.6 to 1.2 in suction and return',
  US: 'Rabie, Fluid Power Engineering, 3.3: 7 to 15 in pressure lines, 2 to 4 in suction and return',
} as const;

function Part({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  const styles = useStyles();
  return (
    <section className={styles.part} aria-label={title}>
      <Subtitle2 as="h2">{title}</Subtitle2>
      <div className={styles.grid}>{children}</div>
    </section>
  );
}

/** The one form: what the hose has to do, in the order in which it is asked on the telephone. */
export function DutyForm({ fields, mistakes, isAsked, endForms, fluids, onFields }: Props) {
  const styles = useStyles();
  const fluidList = useId();
  const units = UNITS_OF[fields.units];
  const [length, pressure, degrees] = [units.length.symbol, units.pressure.symbol, units.temperature.symbol];
  const frame = (field: DutyField, label: string, hint: string | undefined, control: ReactNode) => {
    const mistake = isAsked || fields[field].trim() !== '' ? mistakes[field] : undefined;
    return (
      <Field label={label} hint={hint} validationState={mistake ? 'error' : 'none'} validationMessage={mistake}>
        {control as never}
      </Field>
    );
  };
  const text = (field: DutyField, label: string, hint?: string, list?: string) =>
    frame(
      field,
      label,
      hint,
      <Input
        className={styles.narrow}
        value={fields[field]}
        onChange={(_, { value }) => onFields({ [field]: value })}
        input={list ? { list } : undefined}
      />,
    );
  const pick = (field: DutyField, label: string, options: readonly (readonly [string, string])[], hint?: string) =>
    frame(
      field,
      label,
      hint,
      <Select className={styles.narrow} value={fields[field]} onChange={(_, { value }) => onFields({ [field]: value })}>
        {options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </Select>,
    );
  const grades = ISO_VISCOSITY_GRADES.filter(row => row.at100 !== undefined).map(
    ({ grade }) => [String(grade), `ISO VG ${grade}`] as const,
  );
  const forms = (chosen: string) => [
    ['', 'choose'] as const,
    ...[...new Set([...endForms, ...(chosen ? [chosen] : [])])].map(form => [form, form] as const),
  ];
  return (
    <div className={styles.form}>
      <RadioGroup
        layout="horizontal"
        aria-label="Units"
        value={fields.units}
        onChange={(_, { value }) => onFields(inUnits(fields, value === 'US' ? 'US' : 'metric'))}
      >
        <Radio value="metric" label="Metric" />
        <Radio value="US" label="US" />
      </RadioGroup>
      <datalist id={fluidList}>
        {fluids.map(fluid => (
          <option key={fluid} value={fluid} />
        ))}
      </datalist>
      <Part title="Fluid">
        {text('fluid', 'Fluid', 'as in the catalogue', fluidList)}
        {pick('grade', 'Viscosity', [['', 'not known'], ...grades, [TYPED, 'type it']], 'grades: viscosity index 100')}
        {fields.grade === TYPED && text('viscosity', 'Viscosity (mm²/s)', 'when warm, same as cSt')}
        {text('density', 'Density (kg/m³)')}
      </Part>
      <Part title="Flow or bore">
        {text('flow', `Flow (${units.flow})`)}
        {text('bore', `Bore, at least (${length})`, 'blank = by flow')}
        <div className={styles.wide}>
          {text('fastest', `Fastest velocity (${units.velocity})`, `your own limit. ${USUAL_VELOCITY[fields.units]}`)}
        </div>
      </Part>
      <Part title="Pressure with surges">
        {text('pressure', `Working pressure (${pressure})`)}
        {text('surge', `Highest surge (${pressure})`, 'the peak itself')}
      </Part>
      <Part title="Temperatures of fluid and air">
        {text('fluidColdest', `Fluid, coldest (${degrees})`)}
        {text('fluidHottest', `Fluid, hottest (${degrees})`)}
        {text('airColdest', `Air, coldest (${degrees})`)}
        {text('airHottest', `Air, hottest (${degrees})`)}
      </Part>
      <Part title="Vacuum">
        {text('vacuum', `Vacuum (${pressure} below air)`, 'blank = none; yes = some, not known how much')}
      </Part>
      <section className={styles.part} aria-label="Route and bends">
        <Subtitle2 as="h2">Route and bends</Subtitle2>
        <RouteFields
          route={fields.route}
          unit={length}
          mistakes={mistakes}
          isAsked={isAsked}
          onChange={route => onFields({ route })}
        />
        <div className={styles.grid}>
          {text('straightRun', 'Straight at couplings', '× outside diameter; FAA-H-8083-30: at least 2')}
          {text('slack', 'Slack (%)', 'NAVEDTRA 14105: 5 to 8')}
        </div>
      </section>
      <Part title="Ends">
        {pick('formA', 'End form A', forms(fields.formA))}
        {text('angleA', 'Angle A (°)', '0 = straight, blank = any')}
        {pick('formB', 'End form B', forms(fields.formB))}
        {text('angleB', 'Angle B (°)', '0 = straight, blank = any')}
      </Part>
      <Part title="Quantity">{text('quantity', 'Assemblies')}</Part>
    </div>
  );
}
