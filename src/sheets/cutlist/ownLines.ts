import { pieceKey } from '../pieces/piece';
import type { CutWishes, Gathered } from './gatherCuts';
import { lineKey } from './lineKey';

/** The lines that a plan was made of: of their pieces it is known whose they are. */
export function plannedLines({ read, report }: Gathered): readonly string[] {
  const taken = new Set(report.taken);
  return read.lines.filter(({ row }) => taken.has(row)).map(lineKey);
}

/** One thing that somebody may say of lines that look alike, and what is then wished for. */
export interface LookAlikeAnswer {
  readonly label: string;
  readonly wishes: CutWishes;
}

/** What may be said of lines whose pieces may be another week's. Pieces of another length are not planned anew for them. */
export function lookAlikeAnswers({ alike, wishes }: Gathered): readonly LookAlikeAnswer[] {
  const { take = [], otherWork = [], known = [] } = wishes;
  const numbers = alike.flatMap(({ good }) => good.map(({ piece }) => pieceKey(piece)));
  const same = alike.filter(({ isPartly, isOther }) => isPartly || isOther);
  const anew = alike.filter(({ isPlanned, isOther }) => isPlanned && !isOther);
  const answers: (LookAlikeAnswer | undefined)[] = [
    { label: 'This is new work: cut these lines, too', wishes: { ...wishes, otherWork: new Set([...otherWork, ...numbers]) } },
    same.length === 0
      ? undefined
      : {
          label: 'These are the lines planned before',
          wishes: { ...wishes, known: new Set([...known, ...same.map(({ line }) => lineKey(line))]) },
        },
    anew.length === 0
      ? undefined
      : {
          label: 'Plan these lines anew, with the piece numbers they have',
          wishes: { ...wishes, take: new Set([...take, 'planned' as const]) },
        },
  ];
  return answers.filter(answer => answer !== undefined);
}
