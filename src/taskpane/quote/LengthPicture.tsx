import { makeStyles, tokens } from '@fluentui/react-components';
import type { LengthBar } from '../../sheets/duty/lengthBars';

const WIDTH = 288;
const EDGE = 4;
const ROW = 30;
const TALL = 9;

const useStyles = makeStyles({
  figure: { margin: 0, color: tokens.colorNeutralForeground1 },
  picture: { display: 'block', width: '100%', maxWidth: '520px', height: 'auto' },
  caption: { fontSize: tokens.fontSizeBase200 },
});

interface Props {
  readonly name: string;
  readonly bars: readonly LengthBar[];
}

/** Lengths of a hose below each other, to one scale; a line shows where the route ends. */
export function LengthPicture({ name, bars }: Props) {
  const styles = useStyles();
  const longest = Math.max(...bars.map(({ to }) => to));
  if (bars.length === 0 || !(longest > 0)) return null;
  const at = (length: number) => EDGE + (length / longest) * (WIDTH - 2 * EDGE);
  const route = at(bars[0]!.from);
  return (
    <figure className={styles.figure}>
      <svg
        className={styles.picture}
        viewBox={`0 0 ${WIDTH} ${bars.length * ROW}`}
        role="img"
        aria-label={`Lengths of ${name}, to scale: ${bars.map(({ text }) => text).join('; ')}`}
      >
        {bars.map(({ text, from, to }, index) => (
          <g key={text} stroke="currentColor">
            <text x={EDGE} y={index * ROW + 12} fontSize="11" fill="currentColor" stroke="none">
              {text}
            </text>
            <rect x={EDGE} y={index * ROW + 17} width={at(from) - EDGE} height={TALL} fill="currentColor" fillOpacity="0.45" />
            {to > from && (
              <rect x={at(from)} y={index * ROW + 17} width={at(to) - at(from)} height={TALL} fill="none" strokeDasharray="3 2" />
            )}
          </g>
        ))}
        <path d={`M${route} 15V${bars.length * ROW}`} stroke="currentColor" strokeDasharray="1 2" />
      </svg>
      <figcaption className={styles.caption}>
        Along the hose’s axis, to scale. Where the full bar under pressure ends left of the dotted line, the hose pulls at its
        couplings.
      </figcaption>
    </figure>
  );
}
