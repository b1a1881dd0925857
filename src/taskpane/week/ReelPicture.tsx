import { makeStyles, tokens } from '@fluentui/react-components';
import { useId } from 'react';
import type { LengthUnit } from '../../core/units/lengthUnit';
import type { PlannedReel } from '../../sheets/cutlist/plannedReel';
import { groupTexts, leftText, reelName } from '../../sheets/cutlist/reelText';
import { groupKey, reelSegments, type Segment } from '../../sheets/cutlist/reelSegments';

const WIDTH = 296;
const BAR = { y: 16, height: 24 } as const;
/** Narrower groups get their letter above the bar; narrower still, with their neighbours, none: the list has them all. */
const LETTER_INSIDE = 11;
const LETTER_ABOVE = 8;

const useStyles = makeStyles({
  reel: { margin: 0, color: tokens.colorNeutralForeground1 },
  picture: { display: 'block', width: '100%', maxWidth: '640px', height: 'auto' },
  name: { fontWeight: tokens.fontWeightSemibold, fontSize: tokens.fontSizeBase200 },
  list: { margin: `${tokens.spacingVerticalXXS} 0 0`, padding: 0, listStyleType: 'none', fontSize: tokens.fontSizeBase200 },
  cut: { fill: tokens.colorBrandBackground2, '@media (forced-colors: active)': { fill: 'Canvas' } },
  paper: { fill: tokens.colorNeutralBackground1, '@media (forced-colors: active)': { fill: 'Canvas' } },
  key: { display: 'inline-block', minWidth: '1.6em', fontWeight: tokens.fontWeightSemibold },
});

/** Looks by kind and group: never by colour alone. */
function fillOf({ kind, group }: Segment, id: string): string | undefined {
  if (kind === 'kerf') return 'currentColor';
  if (kind === 'cut') return group % 3 === 0 ? undefined : `url(#${id}${group % 3 === 1 ? 'rising' : 'falling'})`;
  if (kind === 'kept') return `url(#${id}dots)`;
  return `url(#${id}crossed)`;
}

function Patterns({ id }: { readonly id: string }) {
  const lines = { stroke: 'currentColor', strokeWidth: 0.8, fill: 'none' } as const;
  const tile = { width: 6, height: 6, patternUnits: 'userSpaceOnUse' } as const;
  return (
    <defs>
      <pattern id={`${id}rising`} {...tile}>
        <path d="M-1 7L7 -1" {...lines} />
      </pattern>
      <pattern id={`${id}falling`} {...tile}>
        <path d="M-1 -1L7 7" {...lines} />
      </pattern>
      <pattern id={`${id}dots`} {...tile}>
        <circle cx="3" cy="3" r="1" fill="currentColor" />
      </pattern>
      <pattern id={`${id}crossed`} {...tile} width={4} height={4}>
        <path d="M-1 5L5 -1M-1 -1L5 5" {...lines} />
      </pattern>
    </defs>
  );
}

/** Letters of the groups: inside where there is room, else above; left out where they would touch the one before. */
function Letters({ segments, paper }: { readonly segments: readonly Segment[]; readonly paper: string }) {
  const spans = new Map<number, { start: number; end: number }>();
  for (const { group, x, width } of segments) {
    if (group < 0) continue;
    const span = spans.get(group);
    spans.set(group, { start: span?.start ?? x, end: x + width });
  }
  let free = -Infinity;
  return [...spans].map(([group, { start, end }]) => {
    const middle = (start + end) / 2;
    const isInside = end - start >= LETTER_INSIDE;
    if (!isInside && middle < free) return null;
    if (!isInside) free = middle + LETTER_ABOVE;
    return (
      <g key={group} fontSize="11" textAnchor="middle">
        {isInside && <circle cx={middle} cy={BAR.y + BAR.height / 2} r="6.5" className={paper} />}
        <text x={middle} y={isInside ? BAR.y + BAR.height / 2 + 4 : BAR.y - 4} fill="currentColor">
          {groupKey(group)}
        </text>
      </g>
    );
  });
}

/** One piece of stock to scale: squaring, cuts, kerfs, what is left; the list below says the same in words. */
export function ReelPicture({
  reel,
  number,
  unit,
}: {
  readonly reel: PlannedReel;
  readonly number: number;
  readonly unit: LengthUnit;
}) {
  const styles = useStyles();
  const id = useId().replace(/[^\w-]/g, '');
  const segments = reelSegments(reel, WIDTH);
  const texts = groupTexts(reel, unit);
  const name = reelName(reel, number, unit);
  return (
    <figure className={styles.reel}>
      <figcaption className={styles.name}>{name}</figcaption>
      <svg
        className={styles.picture}
        viewBox={`-1 0 ${WIDTH + 2} ${BAR.y + BAR.height + 2}`}
        role="img"
        aria-label={`${name}, to scale: ${[...texts.map(({ text }) => text), leftText(reel, unit)].join('; ')}`}
      >
        <Patterns id={id} />
        {segments.map((segment, index) => (
          <rect
            key={index}
            data-kind={segment.kind}
            x={segment.x}
            y={BAR.y}
            width={segment.width}
            height={BAR.height}
            className={fillOf(segment, id) ? undefined : styles.cut}
            fill={fillOf(segment, id)}
            stroke={segment.kind === 'cut' && segment.width > 3 ? 'currentColor' : 'none'}
            strokeWidth="0.5"
          />
        ))}
        <rect x="0" y={BAR.y} width={WIDTH} height={BAR.height} fill="none" stroke="currentColor" />
        <Letters segments={segments} paper={styles.paper} />
      </svg>
      <ul className={styles.list}>
        {texts.map(({ key, text }) => (
          <li key={key}>
            <span className={styles.key}>{key}</span>
            {text}
          </li>
        ))}
        <li>
          <span className={styles.key} aria-hidden="true">
            {reel.isKept ? '⁘' : '×'}
          </span>
          {leftText(reel, unit)}
        </li>
      </ul>
    </figure>
  );
}
