import { READ_PLACES } from '../../core/units/decimalPlaces';
import { Body1, Caption1, Link, makeStyles, MessageBar, MessageBarBody, Subtitle2, tokens } from '@fluentui/react-components';
import { statusOfPiece } from '../../sheets/pieces/pieceStatus';
import type { Recall } from '../../sheets/recall/recall';
import type { RecalledPiece } from '../../sheets/recall/recallPieces';
import type { GaugeError } from '../../sheets/recall/recallFields';
import type { RecordRow } from '../../sheets/recall/recordRows';
import { changedVerdicts, rejudge, retest } from '../../sheets/recall/rejudge';
import type { Workbook } from '../../workbook/workbook';

const useStyles = makeStyles({ list: { fontSize: tokens.fontSizeBase200, overflowWrap: 'anywhere' } });

interface Props {
  readonly workbook: Workbook;
  readonly found: Recall;
  /** What the gauge read too high, where that is known. */
  readonly error: GaugeError | undefined;
}

/** Verdicts and pressures that are others once the gauge's error is taken off. */
function Judged({ found, error }: { readonly found: Recall; readonly error: GaugeError }) {
  const pieces = [...found.hits, ...found.open].map(({ piece }) => piece);
  if (error.unit.quantity === 'pressure') {
    const missed = retest(pieces, error).filter(({ isReached }) => !isReached);
    return (
      <MessageBar intent={missed.length > 0 ? 'error' : 'success'} layout="multiline">
        <MessageBarBody>
          {missed.length === 0 && 'All reached their test pressure all the same.'}
          {missed.map(({ piece, reached, asked }) => (
            <div key={piece.row}>
              {`${piece.piece}: ${reached.toDecimalPlaces(1)} of ${asked.value.toDecimalPlaces(1)} ${asked.unit.symbol}: test it again`}
            </div>
          ))}
        </MessageBarBody>
      </MessageBar>
    );
  }
  const judging = rejudge(pieces, error);
  const changed = changedVerdicts(judging);
  return (
    <MessageBar intent={changed.length > 0 ? 'error' : 'success'} layout="multiline">
      <MessageBarBody>
        {changed.length === 0 && `${judging.rejudged.length} ends judged again: no verdict changes.`}
        {changed.map(({ piece, end, was, is, mean, target }) => (
          <div key={`${piece.row} ${end}`}>
            {`${piece.piece}, end ${end}: ${is} (was ${was}), true mean ${mean.toDecimalPlaces(READ_PLACES)} ${target.unit.symbol}`}
          </div>
        ))}
        {judging.open.map(({ piece, end, why }) => (
          <div key={`open ${piece.row} ${end}`}>{`${piece.piece}, end ${end}: not judged: ${why}`}</div>
        ))}
      </MessageBarBody>
    </MessageBar>
  );
}

/** What came of a recall: pieces with a way to each, orders, rows of records, and what cannot be excluded. */
export function RecallResult({ workbook, found, error }: Props) {
  const styles = useStyles();
  const { hits, open, orders, openOrders, records, openRecords } = found;
  const list = (pieces: readonly RecalledPiece[]) =>
    pieces.map(({ piece, why }) => (
      <div key={piece.row}>
        <Link inline onClick={() => void workbook.select({ sheet: piece.sheet, address: `A${piece.row}` })}>
          {piece.piece || `Row ${piece.row}`}
        </Link>
        {`, ${statusOfPiece(piece) || 'waiting'}${piece.order && `, order ${piece.order}`}: ${why}`}
      </div>
    ));
  const recordLine = ({ sheet, row, assembly, piece }: RecordRow, why: string) => (
    <div key={`${sheet} ${row}`}>
      {why && 'Records: '}
      <Link inline onClick={() => void workbook.select({ sheet, address: `A${row}` })}>
        Row {row}
      </Link>
      {`: ${[assembly, piece].filter(Boolean).join(' ')}${why}`}
    </div>
  );
  return (
    <section aria-label="Recalled">
      <div>
        <Body1>Orders: {orders.join(', ') || 'none named'}</Body1>
      </div>
      {error && <Judged found={found} error={error} />}
      <div className={styles.list}>{list(hits)}</div>
      {open.length + openRecords.length > 0 && (
        <>
          <Subtitle2>Cannot be excluded</Subtitle2>
          {openOrders.length > 0 && <Caption1> Orders: {openOrders.join(', ')}</Caption1>}
          <div className={styles.list}>{list(open)}</div>
          <div className={styles.list}>{openRecords.map(({ record, why }) => recordLine(record, `: ${why}`))}</div>
        </>
      )}
      {records.length > 0 && (
        <details className={styles.list}>
          <summary>Rows of records</summary>
          {records.map(record => recordLine(record, ''))}
        </details>
      )}
    </section>
  );
}
