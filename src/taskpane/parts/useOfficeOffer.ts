import { useCallback, useEffect, useMemo, useState } from 'react';
import { declineOffice, officeMemory, rememberTaken, type OfficeMemory } from '../../sheets/parts/officeMemory';
import { officeOffer, type OfficeOffer } from '../../sheets/parts/officeOffer';
import { tablesFromFiles, type FileTables, type PartsFileReader } from '../../sheets/parts/tablesFromFiles';
import type { OfficeFile } from '../../workbook/officeFile';
import type { Workbook } from '../../workbook/workbook';
import { useKnownOffice } from './knownOffice';
import { useRememberedHeadings } from './rememberedHeadings';
import type { CatalogueShown } from './useWorkbookCatalogue';

/** What the office's catalogue is to the workbook, and what somebody can say to it. */
export interface OfficeView {
  /** `same` without being read; undefined while it is compared, or where there is no file. */
  readonly offer: OfficeOffer | { readonly kind: 'known' } | undefined;
  readonly isDeclined: boolean;
  readonly decline: (isDeclined: boolean) => void;
  /** It was taken, and the workbook's catalogue has this handle now. */
  readonly taken: (handle: string) => void;
}

/** A file is read once, whoever compares it. */
const read = new WeakMap<OfficeFile, Promise<FileTables>>();

function tablesOf(reader: PartsFileReader, file: Extract<OfficeFile, { status: 'there' }>): Promise<FileTables> {
  const { name, bytes } = file;
  const reading = read.get(file) ?? tablesFromFiles(reader, [{ name, bytes: async () => bytes }], 0, {});
  read.set(file, reading);
  return reading;
}

function useTables(reader: PartsFileReader, file: OfficeFile | undefined, isWanted: boolean): FileTables | undefined {
  const [found, setFound] = useState<{ readonly of: OfficeFile; readonly tables: FileTables }>();
  useEffect(() => {
    if (!isWanted || file?.status !== 'there') return undefined;
    let isLate = false;
    void tablesOf(reader, file).then(tables => !isLate && setFound({ of: file, tables }));
    return () => {
      isLate = true;
    };
  }, [reader, file, isWanted]);
  return found && found.of === file ? found.tables : undefined;
}

function useMemory(workbook: Workbook): readonly [OfficeMemory | undefined, () => Promise<void>] {
  const [memory, setMemory] = useState<OfficeMemory>();
  const again = useCallback(async () => setMemory(await officeMemory(workbook)), [workbook]);
  useEffect(() => {
    let isLate = false;
    void officeMemory(workbook).then(found => !isLate && setMemory(found));
    return () => {
      isLate = true;
    };
  }, [workbook]);
  return [memory, again];
}

/** Compares the office's catalogue with that of the workbook; a file that is known to have nothing to add is not read. */
export function useOfficeOffer(
  workbook: Workbook,
  reader: PartsFileReader,
  file: OfficeFile | undefined,
  shown: CatalogueShown,
): OfficeView {
  const known = useKnownOffice();
  const [maps] = useRememberedHeadings();
  const [memory, readMemory] = useMemory(workbook);
  const isSettled = shown.status === 'ready' || shown.status === 'none';
  const standing = shown.status === 'ready' ? shown.found : undefined;
  const [tag, handle] = [file?.status === 'there' ? file.tag : undefined, standing?.catalogue?.handle];
  const isKnown = tag !== undefined && handle !== undefined && known.isSame(tag, handle);
  const tables = useTables(reader, file, isSettled && !isKnown && memory?.isDeclined === false);
  const { handles, remember } = known;
  const offer = useMemo(
    () => (tables && isSettled && memory ? officeOffer({ file: tables, standing, memory, maps, known: handles }) : undefined),
    [tables, isSettled, standing, memory, maps, handles],
  );
  const isSame = offer?.kind === 'same';
  useEffect(() => {
    if (isSame && tag !== undefined && handle !== undefined) remember(tag, handle);
  }, [isSame, tag, handle, remember]);
  return {
    offer: isKnown ? { kind: 'known' } : offer,
    isDeclined: memory?.isDeclined ?? false,
    decline: isDeclined => void declineOffice(workbook, isDeclined).then(readMemory),
    taken: now => {
      if (offer && 'handle' in offer) void rememberTaken(workbook, offer.handle, now).then(readMemory);
    },
  };
}
