import { Body1, Caption1, Link, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import type { ArgumentView, CellView } from '../../../sheets/explain/cellView';

const useStyles = makeStyles({
  card: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  list: { margin: 0, display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  term: { fontWeight: tokens.fontWeightSemibold, overflowWrap: 'anywhere' },
  details: { margin: 0 },
  now: { color: tokens.colorNeutralForeground2, overflowWrap: 'anywhere' },
});

function Argument({ argument: { name, help, optional, written, now } }: { readonly argument: ArgumentView }) {
  const styles = useStyles();
  return (
    <div>
      <dt className={styles.term}>
        {optional ? `[${name}]` : name}
        {written && <code> {written}</code>}
      </dt>
      <dd className={styles.details}>
        <Caption1 block className={styles.now}>
          now: {now}
        </Caption1>
        <Caption1 block>{help}</Caption1>
      </dd>
    </div>
  );
}

/** The selected cell's function, and what each argument means and holds. */
export function FunctionCard({ cell }: { readonly cell: CellView }) {
  const styles = useStyles();
  return (
    <div className={styles.card} role="group" aria-label={`Cell ${cell.address}`}>
      {cell.call ? (
        <>
          <Subtitle2 as="h2">HOSE.{cell.call.id}</Subtitle2>
          <Body1>{cell.call.description}</Body1>
          <dl className={styles.list}>
            {cell.call.arguments.map(argument => (
              <Argument key={argument.name} argument={argument} />
            ))}
          </dl>
          {cell.call.helpUrl && (
            <Link href={cell.call.helpUrl} target="_blank" rel="noreferrer">
              More about {cell.call.id}
            </Link>
          )}
        </>
      ) : (
        <Body1>
          {cell.address} holds no Benchrow function. Select a cell that does, or type <code>=HOSE.</code> into an empty one.
        </Body1>
      )}
    </div>
  );
}
