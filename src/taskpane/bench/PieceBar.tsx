import {
  Button,
  Caption1,
  Field,
  Input,
  Link,
  makeStyles,
  MessageBar,
  MessageBarBody,
  Text,
  tokens,
} from '@fluentui/react-components';
import { useState } from 'react';
import { statusOfPiece } from '../../sheets/pieces/pieceStatus';
import { WritingBar } from '../controls/WritingBar';
import { PieceCard } from './PieceCard';
import type { usePiece } from './usePiece';

const useStyles = makeStyles({
  bar: { display: 'flex', flexDirection: 'column', gap: tokens.spacingVerticalS },
  row: { display: 'flex', flexWrap: 'wrap', alignItems: 'end', gap: tokens.spacingHorizontalS },
  grow: { flex: '1 1 150px', minWidth: 0 },
  narrow: { minWidth: 0, width: '100%' },
});

interface Props {
  readonly piece: ReturnType<typeof usePiece>;
  /** Who works here. */
  readonly operator: string;
  /** Number of the piece whose readings are entered; "" = none. */
  readonly inWork: string;
}

/** A piece is picked by its number, or its tag is scanned: a scanner types the number and Enter. */
export function PieceBar({ piece: { shown, find, outcome, undo, fill, scrap, makeAgain }, operator, inWork }: Props) {
  const styles = useStyles();
  const [text, setText] = useState('');
  const go = () => {
    if (text.trim() === '') return;
    void find(text);
    setText('');
  };
  return (
    <section className={styles.bar} aria-label="Piece">
      <div className={styles.row}>
        <Field className={styles.grow} label="Piece or tag">
          <Input
            className={styles.narrow}
            value={text}
            placeholder="Number, or scan its tag"
            autoComplete="off"
            onChange={(_, { value }) => setText(value)}
            onKeyDown={({ key }) => key === 'Enter' && go()}
          />
        </Field>
        <Button onClick={go}>Find</Button>
      </div>
      <div role="status">
        {shown.kind === 'failed' && (
          <MessageBar intent="warning" layout="multiline">
            <MessageBarBody>{shown.sentence}</MessageBarBody>
          </MessageBar>
        )}
        {shown.kind === 'several' && (
          <>
            Which one?{' '}
            {shown.pieces.map(({ piece }, index) => (
              <span key={piece}>
                {index > 0 && ', '}
                <Link inline onClick={() => void find(piece)}>
                  {piece}
                </Link>
              </span>
            ))}
          </>
        )}
        {shown.kind === 'found' && (
          <Text weight="semibold">
            Piece {shown.piece.piece}: {statusOfPiece(shown.piece) || 'waits for a cut list'}
          </Text>
        )}
      </div>
      {inWork !== '' && shown.kind === 'found' && shown.piece.piece !== inWork && (
        <Caption1>
          Readings are entered for{' '}
          <Link inline onClick={() => void find(inWork, false)}>
            {inWork}
          </Link>
          .
        </Caption1>
      )}
      {shown.kind === 'found' && (
        <PieceCard
          key={shown.piece.piece}
          pieces={shown.pieces}
          piece={shown.piece}
          operator={operator}
          isBusy={outcome.kind === 'busy'}
          onFill={edit => void fill(edit)}
          onScrap={why => void scrap(why, operator)}
          onAgain={count => void makeAgain(count)}
        />
      )}
      <WritingBar outcome={outcome} onUndo={undo} />
    </section>
  );
}
