import { makeStyles, Radio, RadioGroup, Subtitle2, tokens } from '@fluentui/react-components';
import { useId, type ReactNode } from 'react';
import { ISO_VISCOSITY_GRADES } from '../../core/tables/isoViscosityGrades';
import { dutyControls, type DutyControls } from './dutyControls';
import { inUnits, TYPED } from '../../sheets/duty/dutyFields';
import { UNITS_OF } from '../../sheets/duty/dutyUnits';
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

interface Props extends DutyControls {
  readonly endForms: readonly string[];
  readonly fluids: readonly string[];
}

/** Recommended velocities in flexible hoses, as a hint only. Source (on the help page, too): Rabie, Fluid Power Engineering (2009), section 3.3. */
const USUAL_VELOCITY = {
  metric: 'Often recommended: 2.1 to 4.6 in pressure lines, 0.6 to 1.2 in suction and return',
  US: 'Often recommended: 7 to 15 in pressure lines, 2 to 4 in suction and return',
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
  const { text, pick } = dutyControls({ fields, mistakes, isAsked, className: styles.narrow, onFields });
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
        {text('fluid', 'Fluid', 'As in the catalogue', fluidList)}
        {pick('grade', 'Viscosity', [['', 'not known'], ...grades, [TYPED, 'type it']], 'Grades: viscosity index 100')}
        {fields.grade === TYPED && text('viscosity', 'Viscosity (mm²/s)', 'When warm, same as cSt')}
        {text('density', 'Density (kg/m³)')}
      </Part>
      <Part title="Flow or bore">
        {text('flow', `Flow (${units.flow})`)}
        {text('bore', `Bore, at least (${length})`, 'Blank = by flow')}
        <div className={styles.wide}>
          {text('fastest', `Fastest velocity (${units.velocity})`, `Your own limit. ${USUAL_VELOCITY[fields.units]}`)}
        </div>
      </Part>
      <Part title="Pressure with surges">
        {text('pressure', `Working pressure (${pressure})`)}
        {text('surge', `Highest surge (${pressure})`, 'The peak itself')}
      </Part>
      <Part title="Temperatures of fluid and air">
        {text('fluidColdest', `Fluid, coldest (${degrees})`)}
        {text('fluidHottest', `Fluid, hottest (${degrees})`)}
        {text('airColdest', `Air, coldest (${degrees})`)}
        {text('airHottest', `Air, hottest (${degrees})`)}
      </Part>
      <Part title="Vacuum">
        {text('vacuum', `Vacuum (${pressure} below air)`, 'Blank = none; yes = some, not known how much')}
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
          {text('straightRun', 'Straight at couplings', '× outside diameter; often recommended: at least 2')}
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
