import { makeStyles, tokens } from '@fluentui/react-components';
import { Decimal } from '../../core/units/decimal';
import { UNITS_OF, withUnit } from './dutyUnits';
import type { Demand } from './readDuty';
import { routeTexts } from './routeTexts';
import { routePlan, scaleLength, upTo, type PlanPoint } from './routePlan';

const WIDTH = 288;
const TALLEST = 260;
const EDGE = 26;
const FOOT = 22;
const LETTER = 14;
const THINNEST = 2;
/** From here on a label stands beside the hose rather than above it. */
const SIDEWAYS = 0.3;

const useStyles = makeStyles({
  route: { margin: 0, color: tokens.colorNeutralForeground1 },
  picture: { display: 'block', width: '100%', maxWidth: '520px', height: 'auto' },
  // High contrast keeps its own two colours.
  inside: { stroke: tokens.colorNeutralBackground3, '@media (forced-colors: active)': { stroke: 'Canvas' } },
  list: { margin: `${tokens.spacingVerticalXXS} 0 0`, paddingLeft: '1.6em', fontSize: tokens.fontSizeBase200 },
  caption: { fontSize: tokens.fontSizeBase200 },
});

interface Props {
  readonly name: string;
  readonly demand: Demand;
  /** In the form's unit; undefined = not known. */
  readonly outsideDiameter: Decimal | undefined;
  /** Least bend radius of the hose, in the form's unit. */
  readonly leastRadius: Decimal | undefined;
  /** Rigid length of the couplings from their ends, in the form's unit. */
  readonly couplings?: readonly [Decimal | undefined, Decimal | undefined];
}

function drawing({ demand, outsideDiameter, couplings }: Props) {
  const outside = outsideDiameter?.toNumber() ?? 0;
  const parts = demand.route.map(part =>
    part.kind === 'straight'
      ? { kind: part.kind, length: part.length.toNumber() }
      : { ...part, radius: part.radius.toNumber(), angleDegrees: part.angleDegrees.toNumber() },
  );
  const placed = routePlan(parts, outside);
  const points = placed.flatMap(part => part.points);
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs) - outside / 2, Math.max(...ys) + outside / 2];
  const [wide, high] = [Math.max(...xs) + outside / 2 - left, top - Math.min(...ys) + outside / 2];
  const scale = Math.min((WIDTH - 2 * EDGE) / Math.max(wide, 1e-9), TALLEST / Math.max(high, 1e-9));
  const at = ({ x, y }: PlanPoint): PlanPoint => ({ x: EDGE + (x - left) * scale, y: EDGE + (top - y) * scale });
  const line = (list: readonly PlanPoint[]) =>
    list
      .map(at)
      .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(2)} ${y.toFixed(2)}`)
      .join('');
  const ends = couplings?.map((length, index) =>
    length?.gt(0) ? line(upTo(index === 0 ? points : [...points].reverse(), length.toNumber())) : undefined,
  );
  return {
    placed,
    at,
    line,
    points,
    ends,
    scale,
    height: 2 * EDGE + high * scale + FOOT,
    stroke: Math.max(THINNEST, outside * scale),
  };
}

/** The route in its plane, to scale; the list below says the same in words. */
export function RoutePicture(props: Props) {
  const styles = useStyles();
  const { name, demand, leastRadius, outsideDiameter } = props;
  if (demand.route.length === 0) return null;
  const unit = UNITS_OF[demand.units].length;
  const texts = routeTexts(demand, leastRadius);
  const { placed, at, line, points, ends, scale, height, stroke } = drawing(props);
  const ruler = scaleLength((WIDTH - 2 * EDGE) / 3 / scale);
  const beside = (point: PlanPoint, away: PlanPoint, distance: number) => {
    const { x, y } = at(point);
    return { x: x + away.x * (stroke / 2 + distance), y: y - away.y * (stroke / 2 + distance) };
  };
  const first = at(points[0]!);
  const last = at(points[points.length - 1]!);
  const lastAway = placed[placed.length - 1]!.away;
  return (
    <figure className={styles.route}>
      <svg
        className={styles.picture}
        viewBox={`0 0 ${WIDTH} ${height}`}
        role="img"
        aria-label={`Route of ${name}, to scale, seen from above: ${texts.map(({ text }) => text).join('; ')}`}
      >
        <path d={line(points)} fill="none" stroke="currentColor" strokeWidth={stroke + 1.5} strokeLinejoin="round" />
        <path
          d={line(points)}
          fill="none"
          className={styles.inside}
          strokeWidth={Math.max(1, stroke - 0.5)}
          strokeLinejoin="round"
        />
        {placed.map(
          (part, index) =>
            texts[index]!.isTight && (
              <path
                key={index}
                d={line(part.points)}
                fill="none"
                stroke="currentColor"
                strokeWidth={stroke}
                strokeDasharray="2 3"
              />
            ),
        )}
        {ends?.map(
          (path, index) => path && <path key={index} d={path} fill="none" stroke="currentColor" strokeWidth={stroke + 5} />,
        )}
        {placed.map((part, index) => {
          const { x, y } = beside(part.middle, part.away, 9);
          const side = part.away.x > SIDEWAYS ? 'start' : part.away.x < -SIDEWAYS ? 'end' : 'middle';
          return (
            <text key={index} x={x} y={y + 4} fontSize="11" textAnchor={side} fill="currentColor">
              {index + 1}
              {texts[index]!.isTight && (
                <tspan x={x} dy="11">
                  tight
                </tspan>
              )}
            </text>
          );
        })}
        <g fontSize="12" fontWeight="600" textAnchor="middle" fill="currentColor">
          <text x={first.x - LETTER} y={first.y + 4}>
            A
          </text>
          <text x={last.x + lastAway.y * LETTER} y={last.y + lastAway.x * LETTER + 4}>
            B
          </text>
        </g>
        <g stroke="currentColor" fill="currentColor" fontSize="10">
          <path d={`M${EDGE} ${height - 14}v6h${ruler * scale}v-6`} fill="none" />
          <text x={EDGE + ruler * scale + 6} y={height - 6} stroke="none">
            {withUnit(new Decimal(ruler), unit)}
          </text>
        </g>
      </svg>
      <figcaption className={styles.caption}>
        Drawn flat and without slack
        {outsideDiameter === undefined && '; the hose as a line, for its outside diameter is not known'}.
      </figcaption>
      <ol className={styles.list}>
        {texts.map(({ text }, index) => (
          <li key={index}>{text}</li>
        ))}
      </ol>
    </figure>
  );
}
