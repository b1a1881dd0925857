import {
  Body1,
  Button,
  Caption1,
  Card,
  Link,
  makeStyles,
  MessageBar,
  MessageBarBody,
  MessageBarTitle,
  Spinner,
  Subtitle2,
  tokens,
} from '@fluentui/react-components';
import { catalogueTables, TABLE_NAMES } from '../../core/catalogue/tables/catalogueTables';
import type { Workbook } from '../../workbook/workbook';
import { chooseCatalogue, type WorkbookCatalogue } from '../../sheets/catalogue/workbookCatalogue';
import { catalogueProblems } from '../../sheets/parts/loadedCatalogue';
import { PlacedProblems } from './PlacedProblems';
import type { CatalogueShown } from './useWorkbookCatalogue';
import { cellWords } from '../../workbook/cellWords';
import { rangeText } from '../../workbook/a1';

const useStyles = makeStyles({
  card: { gap: tokens.spacingVerticalS },
  handle: { overflowWrap: 'anywhere', fontWeight: tokens.fontWeightSemibold },
});

function Counts({ found }: { readonly found: WorkbookCatalogue }) {
  const { catalogue } = found;
  if (!catalogue) return null;
  const counts = TABLE_NAMES.flatMap(name =>
    catalogue[name].length > 0 ? [`${catalogueTables[name].sheet} ${catalogue[name].length}`] : [],
  );
  const { leftOutRows } = catalogue;
  return (
    <Caption1>
      {counts.join(' · ')}
      {leftOutRows > 0 && ` · ${leftOutRows} ${leftOutRows === 1 ? 'row' : 'rows'} left out`}
    </Caption1>
  );
}

function Found({
  workbook,
  found,
  onAgain,
}: {
  readonly workbook: Workbook;
  readonly found: WorkbookCatalogue;
  readonly onAgain: () => void;
}) {
  const styles = useStyles();
  const { cell, shown, reason, catalogue, isNamed, others } = found;
  const sentence = typeof shown === 'object' ? shown.sentence : undefined;
  return (
    <>
      <Card size="small" className={styles.card} role="group" aria-label="Catalogue of this workbook">
        <Subtitle2 as="h2">Catalogue of this workbook</Subtitle2>
        <Body1 className={styles.handle}>{cellWords(shown)}</Body1>
        <Counts found={found} />
        <Caption1>
          <Link inline onClick={() => void workbook.select(cell)}>
            {rangeText(cell)}
          </Link>
          {isNamed ? ', named Catalogue' : ', not named Catalogue yet'}
          {others.length > 0 && '; other CATALOGUE cells: '}
          {others.map(other => (
            <Button key={rangeText(other)} size="small" onClick={() => void chooseCatalogue(workbook, other).then(onAgain)}>
              Use {rangeText(other)}
            </Button>
          ))}
        </Caption1>
      </Card>
      {!catalogue && (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>These tables cannot be read as a catalogue</MessageBarTitle>
            {sentence ?? reason}
          </MessageBarBody>
        </MessageBar>
      )}
      {catalogue && shown !== catalogue.handle && (
        <MessageBar intent="info" layout="multiline">
          <MessageBarBody>
            The cell does not show {catalogue.handle} yet. It is being calculated, or has to be: enter it again.{' '}
            <Button size="small" onClick={onAgain}>
              Read again
            </Button>
          </MessageBarBody>
        </MessageBar>
      )}
      <PlacedProblems
        workbook={workbook}
        title={`${catalogue?.leftOutRows} ${catalogue?.leftOutRows === 1 ? 'row is' : 'rows are'} left out`}
        problems={catalogueProblems(found)}
      />
    </>
  );
}

interface Props {
  readonly workbook: Workbook;
  readonly standing: CatalogueShown;
  readonly onAgain: () => void;
}

/** What parts data stand in the workbook, and what is wrong with them. */
export function CatalogueCard({ workbook, standing, onAgain }: Props) {
  switch (standing.status) {
    case 'loading':
      return <Spinner size="small" label="Reading the catalogue of this workbook" />;
    case 'failed':
      return (
        <MessageBar intent="error" layout="multiline">
          <MessageBarBody>
            <MessageBarTitle>The workbook cannot be read</MessageBarTitle>
            {standing.reason}{' '}
            <Button size="small" onClick={onAgain}>
              Try again
            </Button>
          </MessageBarBody>
        </MessageBar>
      );
    case 'none':
      return <Body1>This workbook has no parts data yet. Load your tables of hoses, fittings and crimps first.</Body1>;
    case 'ready':
      return <Found workbook={workbook} found={standing.found} onAgain={onAgain} />;
  }
}
