import { makeStyles, tokens } from '@fluentui/react-components';
import { Decimal } from '../../core/units/decimal';
import { roundedText, UNITS_OF, withUnit } from '../../sheets/duty/dutyUnits';
import { routeDrawing, WIDTH, type RouteDrawing, type RouteInput } from '../../sheets/duty/routeDrawing';
import { routeTexts, type RouteText } from '../../sheets/duty/routeTexts';

const useStyles = makeStyles({
  route: { margin: 0, color: tokens.colorNeutralForeground1 },
  picture: { display: 'block', width: '100%', maxWidth: '520px', height: 'auto' },
  // High contrast keeps its own two colours.
  inside: { stroke: tokens.colorNeutralBackground3, '@media (forced-colors: active)': { stroke: 'Canvas' } },
  list: { margin: `${tokens.spacingVerticalXXS} 0 0`, paddingLeft: '1.6em', fontSize: tokens.fontSizeBase200 },
  caption: { fontSize: tokens.fontSizeBase200 },
});

type Props = RouteInput & { readonly name: string };

/** The hose with its couplings, what it could bend to, and the straight runs asked for. */
function Hose({ drawing, texts }: { readonly drawing: RouteDrawing; readonly texts: readonly RouteText[] }) {
  const styles = useStyles();
  const { hose, parts, couplings, straightRuns, leastArcs, stroke } = drawing;
  return (
    <g fill="none" stroke="currentColor">
      <path d={hose} strokeWidth={stroke + 1.5} strokeLinejoin="round" />
      <path d={hose} className={styles.inside} strokeWidth={Math.max(1, stroke - 0.5)} strokeLinejoin="round" />
      {parts.map(
        (path, index) => texts[index]!.isTight && <path key={index} d={path} strokeWidth={stroke} strokeDasharray="2 3" />,
      )}
      {leastArcs.map((path, index) => (
        <path key={index} d={path} strokeWidth={1} strokeDasharray="5 3" />
      ))}
      {straightRuns.map((path, index) => (
        <path key={index} d={path} strokeWidth={Math.max(2, stroke / 3)} strokeDasharray="1.5 2" />
      ))}
      {couplings.map((path, index) => (
        <path key={index} d={path} strokeWidth={stroke + 5} />
      ))}
    </g>
  );
}

function Labels({
  drawing,
  texts,
  scale,
}: {
  readonly drawing: RouteDrawing;
  readonly texts: readonly RouteText[];
  readonly scale: string;
}) {
  const { labels, ends, ruler, height } = drawing;
  return (
    <>
      {labels.map(({ x, y, anchor }, index) => (
        <text key={index} x={x} y={y + 4} fontSize="11" textAnchor={anchor} fill="currentColor">
          {index + 1}
          {texts[index]!.isTight && (
            <tspan x={x} dy="11">
              tight
            </tspan>
          )}
        </text>
      ))}
      <g fontSize="12" fontWeight="600" textAnchor="middle" fill="currentColor">
        {ends.map(({ x, y }, index) => (
          <text key={index} x={x} y={y + 4}>
            {'AB'[index]}
          </text>
        ))}
      </g>
      <g stroke="currentColor" fill="currentColor" fontSize="10">
        <path d={`M${ruler.left} ${height - 14}v6h${ruler.points}v-6`} fill="none" />
        <text x={ruler.left + ruler.points + 6} y={height - 6} stroke="none">
          {scale}
        </text>
      </g>
    </>
  );
}

/** What the lines of the drawing mean, in a sentence. */
function legend(
  { demand, outsideDiameter, leastRadius, angles }: RouteInput,
  { leastArcs, straightRuns, couplings }: RouteDrawing,
): string {
  const unit = UNITS_OF[demand.units].length;
  const parts = [
    'Drawn flat and without slack',
    outsideDiameter === undefined && 'the hose as a line (its outside diameter is not known)',
    couplings.length > 0 && 'thick: couplings',
    couplings.length > 0 && angles?.some(angle => angle) && 'elbow legs not to scale, end A in the plane of the drawing',
    straightRuns.length > 0 &&
      `dotted: the straight run asked for, ${roundedText(demand.straightRun!)} × ${withUnit(outsideDiameter!, unit)}`,
    leastArcs.length > 0 && `dashed: the tightest this hose may bend, radius ${withUnit(leastRadius!, unit)} to the inside`,
  ];
  return `${parts.filter(Boolean).join('; ')}.`;
}

/** The route in its plane, to scale; the list below says the same in words. */
export function RoutePicture(props: Props) {
  const styles = useStyles();
  const { name, demand, leastRadius } = props;
  const drawing = routeDrawing(props);
  if (!drawing) return null;
  const texts = routeTexts(demand, leastRadius);
  const scale = withUnit(new Decimal(drawing.ruler.length), UNITS_OF[demand.units].length);
  return (
    <figure className={styles.route}>
      <svg
        className={styles.picture}
        viewBox={`0 0 ${WIDTH} ${drawing.height}`}
        role="img"
        aria-label={`Route of ${name}, to scale, seen from above: ${texts.map(({ text }) => text).join('; ')}`}
      >
        <Hose drawing={drawing} texts={texts} />
        <Labels drawing={drawing} texts={texts} scale={scale} />
      </svg>
      <figcaption className={styles.caption}>{legend(props, drawing)}</figcaption>
      <ol className={styles.list}>
        {texts.map(({ text }, index) => (
          <li key={index}>{text}</li>
        ))}
      </ol>
    </figure>
  );
}
