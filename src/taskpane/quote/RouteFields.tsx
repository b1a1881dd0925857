import { Button, Caption1, Field, Input, makeStyles, Select, tokens } from '@fluentui/react-components';
import type { RoutePartText } from '../../sheets/duty/dutyFields';

const useStyles = makeStyles({
  list: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS, margin: 0, padding: 0, listStyleType: 'none' },
  part: {
    display: 'grid',
    gridTemplateColumns: 'repeat(3, minmax(0, 1fr)) auto',
    columnGap: tokens.spacingHorizontalS,
    alignItems: 'start',
    borderLeft: `2px solid ${tokens.colorNeutralStroke1}`,
    paddingLeft: tokens.spacingHorizontalS,
  },
  narrow: { minWidth: 0, width: '100%' },
  name: { gridColumn: '1 / 4', fontWeight: tokens.fontWeightSemibold },
  wide: { gridColumn: '1 / 4' },
  away: { minWidth: 0, gridColumn: '4', gridRow: '1' },
  row: { display: 'flex', flexWrap: 'wrap', gap: tokens.spacingHorizontalS },
});

const FRESH = {
  straight: { kind: 'straight', length: '' },
  bend: { kind: 'bend', radius: '', angle: '90', turn: 'left' },
} as const satisfies Record<string, RoutePartText>;

interface Props {
  readonly route: readonly RoutePartText[];
  readonly unit: string;
  readonly mistakes: Readonly<Record<string, string>>;
  readonly isAsked: boolean;
  readonly onChange: (route: readonly RoutePartText[]) => void;
}

/** The route from end A to end B: straights and bends in their order. */
export function RouteFields({ route, unit, mistakes, isAsked, onChange }: Props) {
  const styles = useStyles();
  const set = (index: number, change: object) =>
    onChange(route.map((part, at) => (at === index ? ({ ...part, ...change } as RoutePartText) : part)));
  const field = (index: number, name: string, label: string, value: string) => {
    const mistake = isAsked || value.trim() !== '' ? mistakes[`route ${index + 1} ${name}`] : undefined;
    return (
      <Field label={label} size="small" validationState={mistake ? 'error' : 'none'} validationMessage={mistake}>
        <Input
          className={styles.narrow}
          size="small"
          aria-label={`${label} of part ${index + 1}`}
          value={value}
          onChange={(_, data) => set(index, { [name]: data.value })}
        />
      </Field>
    );
  };
  return (
    <>
      <Caption1>From end A to end B, as the hose lies. Radii to the inside of the bend.</Caption1>
      <ol className={styles.list} aria-label="Route">
        {route.map((part, index) => (
          <li key={index} className={styles.part}>
            <Caption1 className={styles.name}>
              {index + 1} {part.kind === 'straight' ? 'Straight' : 'Bend'}
            </Caption1>
            <Button
              size="small"
              appearance="subtle"
              className={styles.away}
              aria-label={`Take part ${index + 1} away`}
              title="Take away"
              onClick={() => onChange(route.filter((_, at) => at !== index))}
            >
              ✕
            </Button>
            {part.kind === 'straight' ? (
              <div className={styles.wide}>{field(index, 'length', `Length (${unit})`, part.length)}</div>
            ) : (
              <>
                {field(index, 'radius', `Radius (${unit})`, part.radius)}
                {field(index, 'angle', 'Angle (°)', part.angle)}
                <Field label="To the" size="small">
                  <Select
                    size="small"
                    aria-label={`Side of part ${index + 1}`}
                    value={part.turn}
                    onChange={(_, { value }) => set(index, { turn: value })}
                  >
                    <option>left</option>
                    <option>right</option>
                  </Select>
                </Field>
              </>
            )}
          </li>
        ))}
      </ol>
      <div className={styles.row}>
        <Button size="small" onClick={() => onChange([...route, FRESH.straight])}>
          Add straight
        </Button>
        <Button size="small" onClick={() => onChange([...route, FRESH.bend])}>
          Add bend
        </Button>
      </div>
    </>
  );
}
