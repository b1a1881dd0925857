import { Caption1, Checkbox, Field, Input, makeStyles, Text, tokens } from '@fluentui/react-components';
import { useState } from 'react';
import { FILLED, readTyped, typedOf, type FilledRole, type PieceTyped } from '../../sheets/pieces/fillPiece';
import type { Piece } from '../../sheets/pieces/piece';
import { rejections, statusOfPiece } from '../../sheets/pieces/pieceStatus';
import { beginEdit, editAgain, type PieceEdit } from '../../sheets/pieces/pieceEdit';
import type { Pieces } from '../../sheets/pieces/readPieces';
import { successorOf } from '../../sheets/pieces/scrapPiece';
import { lengthText } from '../../sheets/table/lengthText';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { WriteButton } from '../controls/WriteButton';

const useStyles = makeStyles({
  card: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  grid: {
    display: 'grid',
    gridTemplateColumns: 'repeat(auto-fit, minmax(min(112px, 100%), 1fr))',
    alignItems: 'start',
    gap: tokens.spacingHorizontalM,
  },
  narrow: { minWidth: 0, width: '100%' },
  row: { display: 'flex', flexWrap: 'wrap', alignItems: 'end', gap: tokens.spacingHorizontalS },
});

interface Props {
  readonly pieces: Pieces;
  readonly piece: Piece;
  readonly operator: string;
  readonly isBusy: boolean;
  readonly onFill: (edit: PieceEdit) => void;
  readonly onScrap: (why: string) => void;
  readonly onAgain: (count: number) => void;
}

/** What the piece is, in a line: its line, hose, lot, and how far it is. */
function factsOf(piece: Piece): string {
  const { line, label, order, hose, lot, reel, replaces, useBy } = piece;
  const parts = [
    `Line ${line}${label && ` ${label}`}`,
    order && `order ${order}`,
    hose,
    lot && `lot ${lot}`,
    reel && `reel ${reel}`,
    replaces && `in place of ${replaces}`,
    useBy && `use by ${useBy}`,
  ];
  return parts.filter(Boolean).join(', ');
}

/** `1246 … 1262 mm`; "" where the row gives no limits. */
function lengthLimits({ shortest, longest }: Piece): string {
  if (!shortest || !longest) return '';
  const unit = shortest.unit.symbol as LengthUnit;
  return `${lengthText(shortest.value, unit)} … ${lengthText(longest.value, unit)} ${unit}`;
}

/** One piece at the bench: what is filled in beside the readings, scrapping it, making it again. */
export function PieceCard({ pieces, piece, operator, isBusy, onFill, onScrap, onAgain }: Props) {
  const styles = useStyles();
  const inSheet = typedOf(pieces, piece);
  const [edit, setEdit] = useState(() => beginEdit(inSheet, operator));
  // Read again, the piece shows what others have filled in; what is being typed here stays.
  if (JSON.stringify(inSheet) !== JSON.stringify(edit.shown)) setEdit(editAgain(edit, inSheet, operator));
  const { typed } = edit;
  const setTyped = (next: PieceTyped) => setEdit({ ...edit, typed: next });
  const [why, setWhy] = useState('');
  const [count, setCount] = useState('1');
  const { columns, reader } = pieces.table;
  const { mistakes } = readTyped(pieces, piece, typed);
  const status = statusOfPiece(piece);
  const rejected = rejections(piece);
  const successor = successorOf(pieces.pieces, piece);
  const labels: Readonly<Record<FilledRole, string>> = {
    lot: 'Hose lot',
    lotA: 'Coupling lot A',
    lotB: 'Coupling lot B',
    ferruleLot: 'Ferrule lot',
    finished: 'Finished length',
    testedAt: 'Tested at',
    testedFor: 'Tested for (s)',
    caliper: 'Caliper',
    gauge: 'Gauges used',
    by: 'Made by',
  };
  const unitText = (role: FilledRole) => {
    const unit = role === 'finished' || role === 'testedAt' ? reader.unitOf(role)?.symbol : undefined;
    return unit ? ` (${unit})` : '';
  };
  const asked = piece.testPressure && `Test pressure ${piece.testPressure.value} ${piece.testPressure.unit.symbol}`;
  const hints: Readonly<Partial<Record<FilledRole, string | undefined>>> = {
    finished: lengthLimits(piece),
    testedAt: asked,
    gauge: columns.caliper === undefined ? 'Caliper and pressure gauge: C3; G7' : undefined,
  };
  const isScrapped = status === 'scrapped';
  return (
    <div className={styles.card}>
      <Caption1>{factsOf(piece)}</Caption1>
      {rejected.length > 0 && <Text weight="semibold">Cannot be released: {rejected.join(', ')}.</Text>}
      {successor && <Caption1>{successor.piece} is made in its place.</Caption1>}
      {!isScrapped && (
        <>
          <div className={styles.grid}>
            {FILLED.filter(role => columns[role] !== undefined).map(role => (
              <Field
                key={role}
                label={`${labels[role]}${unitText(role)}`}
                hint={hints[role]}
                validationState={mistakes[role] ? 'error' : 'none'}
                validationMessage={mistakes[role]}
              >
                <Input
                  className={styles.narrow}
                  value={typed[role]}
                  onChange={(_, { value }) => setTyped({ ...typed, [role]: value })}
                />
              </Field>
            ))}
          </div>
          <div className={styles.row}>
            {(['flushed', 'capped'] as const).map(role => (
              <Checkbox
                key={role}
                label={role === 'flushed' ? 'Flushed' : 'Capped'}
                disabled={columns[role] === undefined}
                checked={typed[role]}
                onChange={(_, { checked }) => setTyped({ ...typed, [role]: checked === true })}
              />
            ))}
            <WriteButton appearance="primary" disabled={isBusy} onClick={() => onFill(edit)}>
              Save piece
            </WriteButton>
          </div>
          <Caption1>Old values stay in its note, with the time. Readings are entered below.</Caption1>
        </>
      )}
      <details>
        <summary>Scrap it, or make it again</summary>
        <div className={styles.row}>
          {!isScrapped && (
            <>
              <Field label="Why it is scrapped">
                <Input className={styles.narrow} value={why} onChange={(_, { value }) => setWhy(value)} />
              </Field>
              <WriteButton disabled={isBusy || why.trim() === ''} onClick={() => onScrap(why.trim())}>
                Scrap piece
              </WriteButton>
            </>
          )}
          <Field label="How many again">
            <Input className={styles.narrow} value={count} inputMode="numeric" onChange={(_, { value }) => setCount(value)} />
          </Field>
          <WriteButton disabled={isBusy} onClick={() => onAgain(Number(count.trim() || 'none'))}>
            Make again
          </WriteButton>
        </div>
      </details>
    </div>
  );
}
