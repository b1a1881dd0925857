import { Body1Strong, makeStyles, tokens } from '@fluentui/react-components';
import type { Choice } from '../../sheets/duty/candidates';
import { UNITS_OF } from '../../sheets/duty/dutyUnits';
import type { Demand } from '../../sheets/duty/readDuty';
import { CLOCK_BOX, clockDrawing } from '../../sheets/print/clockDrawing';
import { TWIST_CONVENTION, twistText } from '../../sheets/print/twistAngle';
import { lengthIn, lengthUnitOf } from '../../core/units/lengthUnit';

const useStyles = makeStyles({
  figure: { margin: 0, color: tokens.colorNeutralForeground1 },
  picture: { display: 'block', width: '108px', height: '108px' },
  heading: { display: 'block', margin: 0 },
  caption: { fontSize: tokens.fontSizeBase200 },
});

function Clock({ twist }: { readonly twist: number }) {
  const styles = useStyles();
  const { radius, ticks, arc, hands, labels, alt } = clockDrawing(twist);
  return (
    <svg className={styles.picture} viewBox={CLOCK_BOX} role="img" aria-label={alt}>
      <g fill="none" stroke="currentColor">
        <circle r={radius} strokeWidth="1.2" />
        <path d={ticks} />
        {arc.map(path => (
          <path key={path} d={path} strokeWidth="1.2" />
        ))}
        <path d={hands.a} strokeWidth="5" strokeLinecap="round" />
        <path d={hands.b} strokeWidth="2.5" strokeDasharray="5 4" strokeLinecap="round" />
      </g>
      {labels.map(({ x, y, text }) => (
        <text key={text} x={x} y={y} textAnchor="middle" fontSize="11" fontWeight="600" fill="currentColor">
          {text}
        </text>
      ))}
    </svg>
  );
}

interface Props {
  readonly demand: Demand;
  readonly choice: Choice;
}

/** How the bent ends of an assembly are turned against each other; nothing where an end is straight. */
export function TwistPicture({ demand, choice }: Props) {
  const styles = useStyles();
  const { ends, lengths } = choice;
  const areBent = ends.every(({ fitting }) => (fitting.angle ?? 0) !== 0);
  if (!areBent) return null;
  const unit = UNITS_OF[demand.units].length;
  const own = lengthUnitOf(unit);
  const overall = lengths.overall && lengthIn({ value: lengths.overall, unit }, own);
  const twist = demand.twist?.toNumber();
  return (
    <figure className={styles.figure}>
      <Body1Strong as="h3" className={styles.heading}>
        Twist
      </Body1Strong>
      {twist !== undefined && <Clock twist={twist} />}
      <figcaption className={styles.caption}>
        {twist === undefined
          ? 'Both ends are bent, but no twist angle is given. Ask for it, and enter it under Ends and quantity.'
          : `${twistText(twist, overall, own)}. ${TWIST_CONVENTION}`}
      </figcaption>
    </figure>
  );
}
