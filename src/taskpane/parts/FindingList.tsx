import { Caption1, Link, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import { FINDING_TITLES, type Finding, type FindingKind } from '../../sheets/parts/catalogueFindings';

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, overflowWrap: 'anywhere' },
});

/** Rows of a kind that the pane shows; the sheet has them all. */
const SHOWN = 25;

interface Props {
  readonly findings: readonly Finding[];
  readonly onShow: (finding: Finding) => void;
}

/** Findings by kind, each with a way to its cell. */
export function FindingList({ findings, onShow }: Props) {
  const styles = useStyles();
  const kinds = (Object.keys(FINDING_TITLES) as FindingKind[]).map(
    kind => [kind, findings.filter(each => each.kind === kind)] as const,
  );
  return (
    <>
      {kinds.map(
        ([kind, found]) =>
          found.length > 0 && (
            <section key={kind} aria-label={FINDING_TITLES[kind]}>
              <Subtitle2 as="h2">
                {FINDING_TITLES[kind]}: {found.length}
              </Subtitle2>
              <ul className={styles.list}>
                {found.slice(0, SHOWN).map((finding, index) => (
                  <li key={index}>
                    <Link inline onClick={() => onShow(finding)}>
                      {finding.part}
                    </Link>
                    : {finding.sentence}
                  </li>
                ))}
              </ul>
              {found.length > SHOWN && <Caption1 block>and {found.length - SHOWN} more: write them as a sheet.</Caption1>}
            </section>
          ),
      )}
    </>
  );
}
