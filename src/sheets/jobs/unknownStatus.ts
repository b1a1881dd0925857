import { countedText } from '../../core/countedText';
import { correctionKey, type HeadingCorrections } from '../table/headingCorrections';
import type { TableQuestion } from '../table/tableQuestion';
import type { TableReader } from '../table/tableReader';
import type { JobLine } from './jobLine';
import type { JobRole } from './jobRoles';
import { jobStatus } from './jobStatus';

/** Words of a line that is still to be made, and what sheet Pieces writes of one that is made in part. */
const OPEN =
  /^(?:open|new|none|no|n|false|0|rush|urgent|asap|next|todo|to (?:do|be|make|cut|plan)|not|wip|in (?:work|progress|production|hand)|started|begun|waiting|queued?|released?|approved|confirmed|ordered|order|accepted|priority|high|low|normal|today|tomorrow|[-–—.?]|☐)(?![\p{L}\d])|^[-–—.?☐]$|: \d+ of \d+$/iu;
/** More words than these are asked about together. */
const ASKED_ALONE = 4;

const [ABOUT, BETWEEN] = ['status ', ' ¦ '];
const keyOf = (words: readonly string[]) => ABOUT + words.join(BETWEEN);

/** Status words of job lines that nobody knows: their lines are planned until somebody says to leave them out. */
export class UnknownStatuses {
  private readonly rows = new Map<string, { readonly word: string; count: number }>();
  private readonly answers: ReadonlyMap<string, string>;

  /** @param said what was answered, by `keyOf` */
  constructor(
    private readonly reader: TableReader<JobRole>,
    said: HeadingCorrections,
  ) {
    const own = [...said].filter(([key]) => key.startsWith(ABOUT));
    this.answers = new Map(
      own.flatMap(([key, answer]) =>
        key
          .slice(ABOUT.length)
          .split(BETWEEN)
          .map(word => [word, answer] as const),
      ),
    );
  }

  /** The line as its status was answered. */
  judged(line: JobLine): JobLine {
    const { status, standing } = line;
    const isUnknown = standing.kind === 'ready' && status !== '' && jobStatus(status) === 'open' && !OPEN.test(status);
    if (!isUnknown) return line;
    const key = correctionKey(status);
    const answer = this.answers.get(key);
    if (answer === 'done') return { ...line, standing: { kind: 'done', status } };
    if (answer !== undefined) return line;
    const known = this.rows.get(key);
    if (known) known.count += 1;
    else this.rows.set(key, { word: status, count: 1 });
    return line;
  }

  /** What is asked about the lines read so far. */
  get questions(): readonly TableQuestion[] {
    const words = [...this.rows.values()].sort((a, b) => a.word.localeCompare(b.word, 'en'));
    const groups = words.length > ASKED_ALONE ? [words] : words.map(word => [word]);
    return groups.map(group => {
      const named = group.map(({ word, count }) => `“${word}” (${countedText(count, 'row')})`);
      const are = group.length === 1 ? 'is no status that is known' : 'are no statuses that are known';
      return {
        asked: 'meaning',
        heading: keyOf(group.map(({ word }) => word)),
        column: this.reader.heading('status'),
        sentence: `${named.join(', ')} ${are}: these lines are planned.`,
        choices: [
          { value: 'open', label: 'Right, plan them' },
          { value: 'done', label: 'Leave them out' },
        ],
      };
    });
  }
}
