import { useCallback, useMemo } from 'react';
import * as v from 'valibot';
import { useStored } from '../controls/useStored';

/** The tag of a file of the office, and the handle of a workbook to which that file had nothing to add. */
const Pairs = v.array(v.tuple([v.string(), v.string()]));
type Pair = v.InferOutput<typeof Pairs>[number];
const MOST = 100;

/** What this computer knows of the office's catalogues. */
export interface KnownOffice {
  /** Handles of catalogues that were once the office's. */
  readonly handles: ReadonlySet<string>;
  /** Whether a file has nothing to add to a catalogue: it need not be read. */
  readonly isSame: (tag: string, handle: string) => boolean;
  readonly remember: (tag: string, handle: string) => void;
}

/** Which catalogues were once the office's, kept on this computer from one visit to the next. */
export function useKnownOffice(): KnownOffice {
  const [{ same }, setStored] = useStored<{ same: unknown }>('officeCatalogue', { same: [] });
  const pairs = useMemo((): readonly Pair[] => {
    const read = v.safeParse(Pairs, same);
    return read.success ? read.output : [];
  }, [same]);
  const handles = useMemo(() => new Set(pairs.map(([, handle]) => handle)), [pairs]);
  const isSame = useCallback((tag: string, handle: string) => pairs.some(([a, b]) => a === tag && b === handle), [pairs]);
  const remember = useCallback(
    (tag: string, handle: string) => {
      if (!isSame(tag, handle)) setStored({ same: [...pairs, [tag, handle] satisfies Pair].slice(-MOST) });
    },
    [pairs, isSame, setStored],
  );
  return { handles, isSame, remember };
}
