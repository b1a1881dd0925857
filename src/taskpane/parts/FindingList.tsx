import { Caption1, Link, makeStyles, Subtitle2, tokens } from '@fluentui/react-components';
import { FINDING_TITLES, type CatalogueFinding, type FindingKind } from '../../sheets/parts/catalogueFindings';
import { findingGroups, type FindingGroup } from '../../sheets/parts/findingGroups';
import type { RangeAddress } from '../../workbook/workbook';

const useStyles = makeStyles({
  list: { margin: 0, paddingLeft: tokens.spacingHorizontalL, overflowWrap: 'anywhere' },
});

/** Causes of a kind, and places of a cause, that the pane shows; the sheet has them all. */
const SHOWN = 25;
const PLACES_SHOWN = 12;

interface Props {
  readonly findings: readonly CatalogueFinding[];
  readonly onShow: (at: RangeAddress) => void;
}

/** One cause: the part and its sentence, or the sentence and all rows that have it. */
function Cause({ group, onShow }: { readonly group: FindingGroup; readonly onShow: Props['onShow'] }) {
  const { part, sentence, cells, findings } = group;
  if (findings.length === 1) {
    return (
      <>
        <Link inline onClick={() => onShow(cells[0]!.at)}>
          {part}
        </Link>
        : {sentence}
      </>
    );
  }
  const rest = cells.length - PLACES_SHOWN;
  return (
    <>
      {part}, {findings.length} rows: {sentence}:{' '}
      {cells.slice(0, PLACES_SHOWN).map(({ label, at }, index) => (
        <span key={at.address}>
          {index > 0 && ', '}
          <Link inline onClick={() => onShow(at)}>
            {label}
          </Link>
        </span>
      ))}
      {rest > 0 && ` and ${rest} more places`}
    </>
  );
}

/** Findings by kind, each with a way to its cells. */
export function FindingList({ findings, onShow }: Props) {
  const styles = useStyles();
  return (Object.keys(FINDING_TITLES) as FindingKind[]).map(kind => {
    const found = findings.filter(each => each.kind === kind);
    const groups = findingGroups(found);
    if (groups.length === 0) return null;
    return (
      <section key={kind} aria-label={FINDING_TITLES[kind]}>
        <Subtitle2 as="h2">
          {FINDING_TITLES[kind]}: {found.length}
        </Subtitle2>
        <ul className={styles.list}>
          {groups.slice(0, SHOWN).map(group => (
            <li key={`${group.cells[0]!.at.address} ${group.sentence}`}>
              <Cause group={group} onShow={onShow} />
            </li>
          ))}
        </ul>
        {groups.length > SHOWN && <Caption1 block>and {groups.length - SHOWN} more: write them as a sheet.</Caption1>}
      </section>
    );
  });
}
