import { makeStyles, Radio, RadioGroup, tokens } from '@fluentui/react-components';
import { useId, type ReactNode } from 'react';
import { ISO_VISCOSITY_GRADES } from '../../core/tables/isoViscosityGrades';
import { dutyControls, type DutyControls } from './dutyControls';
import { inUnits, TYPED } from '../../sheets/duty/dutyFields';
import { UNITS_OF } from '../../sheets/duty/dutyUnits';
import { foldOfMistake, foldSummary, type DutyFold } from '../../sheets/duty/dutySummary';
import { DutyFoldPart } from './DutyFoldPart';
import { RouteFields } from './RouteFields';

const useStyles = makeStyles({
  form: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalL },
  part: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(128px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  wide: { gridColumn: '1 / -1' },
});

interface Props extends DutyControls {
  readonly endForms: readonly string[];
  readonly fluids: readonly string[];
  /** Hoses are shown: all folds begin closed, so that the result comes soon. */
  readonly isAnswered: boolean;
}

/** Recommended velocities in flexible hoses, as a hint only. Source (on the help page, too): Rabie, Fluid Power Engineering (2009), section 3.3. */
const USUAL_VELOCITY = {
  metric: 'Often recommended: 2.1 to 4.6 in pressure lines, 0.6 to 1.2 in suction and return',
  US: 'Often recommended: 7 to 15 in pressure lines, 2 to 4 in suction and return',
} as const;

/** What the hose has to do: the five fields that matter most, the rest folded with a line that says what is in it. */
export function DutyForm({ fields, mistakes, isAsked, endForms, fluids, isAnswered, onFields }: Props) {
  const styles = useStyles();
  const fluidList = useId();
  const units = UNITS_OF[fields.units];
  const [length, pressure, degrees] = [units.length.symbol, units.pressure.symbol, units.temperature.symbol];
  const { text, pick } = dutyControls({ fields, mistakes, isAsked, className: styles.narrow, onFields });
  const grades = ISO_VISCOSITY_GRADES.filter(row => row.at100 !== undefined).map(
    ({ grade }) => [String(grade), `ISO VG ${grade}`] as const,
  );
  const forms = (chosen: string) => [
    ['', 'any'] as const,
    ...[...new Set([...endForms, ...(chosen ? [chosen] : [])])].map(form => [form, form] as const),
  ];
  const wrong = new Set(isAsked ? Object.keys(mistakes).map(foldOfMistake) : []);
  const fold = (id: DutyFold, title: string, children: ReactNode) => {
    const summary = foldSummary(id, fields);
    return (
      <DutyFoldPart
        key={`${id} ${isAnswered}`}
        title={title}
        summary={summary}
        startsOpen={!isAnswered && summary !== ''}
        hasMistake={wrong.has(id)}
      >
        {children}
      </DutyFoldPart>
    );
  };
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
      <section className={styles.part} aria-label="Duty">
        <div className={styles.grid}>
          {text('fluid', 'Fluid', 'As in the catalogue. Blank: not checked.', fluidList)}
          {text('bore', `Bore, at least (${length})`, 'Blank: from flow and velocity below.')}
          {text('pressure', `Working pressure (${pressure})`)}
          {text('fluidHottest', `Fluid, hottest (${degrees})`)}
          {text('fluidColdest', `Fluid, coldest (${degrees})`)}
        </div>
      </section>
      {fold(
        'flow',
        'Flow and viscosity',
        <div className={styles.grid}>
          {text('flow', `Flow (${units.flow})`)}
          {pick('grade', 'Viscosity', [['', 'not known'], ...grades, [TYPED, 'type it']], 'Grades: viscosity index 100')}
          {fields.grade === TYPED && text('viscosity', 'Viscosity (mm²/s)', 'When warm, same as cSt')}
          {text('density', 'Density (kg/m³)')}
          <div className={styles.wide}>
            {text('fastest', `Fastest velocity (${units.velocity})`, `Your own limit. ${USUAL_VELOCITY[fields.units]}`)}
          </div>
        </div>,
      )}
      {fold(
        'extremes',
        'Surge, vacuum, air',
        <div className={styles.grid}>
          {text('surge', `Highest surge (${pressure})`, 'The peak itself')}
          {text('vacuum', `Vacuum (${pressure} below air)`, 'Blank: no vacuum. yes: vacuum, amount unknown.')}
          {text('airColdest', `Air, coldest (${degrees})`)}
          {text('airHottest', `Air, hottest (${degrees})`)}
        </div>,
      )}
      {fold(
        'route',
        'Route and bends',
        <>
          <RouteFields
            route={fields.route}
            unit={length}
            mistakes={mistakes}
            isAsked={isAsked}
            onChange={route => onFields({ route })}
          />
          <div className={styles.grid}>
            {text('straightRun', 'Straight at couplings', '× outside diameter. Often recommended: at least 2')}
            {text('slack', 'Slack (%)', 'NAVEDTRA 14105: 5 to 8')}
          </div>
        </>,
      )}
      {fold(
        'ends',
        'Ends and quantity',
        <div className={styles.grid}>
          {pick('formA', 'End form A', forms(fields.formA), 'any: the cheapest that fits')}
          {text('angleA', 'Angle A (°)', '0: straight. Blank: any.')}
          {pick('formB', 'End form B', forms(fields.formB), 'any: the cheapest that fits')}
          {text('angleB', 'Angle B (°)', '0: straight. Blank: any.')}
          {text('twist', 'Twist angle (°)', 'Counter-clockwise, looking from end A. Blank: not given.')}
          {text('quantity', 'Assemblies')}
        </div>,
      )}
    </div>
  );
}
