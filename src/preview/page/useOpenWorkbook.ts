import { useCallback, useEffect, useRef, useState } from 'react';
import type { OpenedWorkbook } from '../xlsx/readXlsx';
import type { Workbook } from '../../workbook/workbook';
import { comingWorkbook } from '../host/comingWorkbook';
import { EMPTY_TITLE, emptyWorkbook } from './emptyWorkbook';
import { fileBytes } from './fileBytes';
import { loadReader, loadSpreadsheet, nextPaint } from './heavyParts';
import { pageFunctions, type PageFunctions } from './pageFunctions';
import { sampleBytes, samples, type Sample } from './samples';
import { downloadFile } from '../../host/copyFile/downloads';
import type { Spreadsheet } from './spreadsheet';
import { useUnsaved } from './useUnsaved';
import { errorSentence } from '../../workbook/errorSentence';

const XLSX_NAME = /\.xlsx$/i;

function sentenceOf(error: unknown): string {
  return errorSentence(error);
}

async function readBytes(bytes: Uint8Array, title: string): Promise<OpenedWorkbook> {
  const { readXlsx } = await loadReader();
  return readXlsx(bytes, title);
}

const readSample = async (sample: Sample) => readBytes(await sampleBytes(sample), sample.title);

/** What is open, or what went wrong. */
interface PageState {
  readonly title: string;
  readonly busy: string;
  readonly problem: string;
  readonly notes: readonly string[];
}

const START: PageState = { title: '', busy: 'Opening …', problem: '', notes: [] };

/** The spreadsheet in its place on the page; another one is shown in its stead. */
function useShownSpreadsheet(change: (part: Partial<PageState>) => void) {
  const container = useRef<HTMLDivElement>(null);
  const current = useRef<Spreadsheet | undefined>(undefined);
  const [spreadsheet, setSpreadsheet] = useState<Spreadsheet>();
  const [first] = useState(comingWorkbook);
  const [port, setPort] = useState<Workbook | undefined>(first.port);
  const show = useCallback(
    async (opened: OpenedWorkbook, title: string, known: PageFunctions) => {
      const { openSpreadsheet } = await loadSpreadsheet();
      if (current.current) setPort(undefined);
      current.current?.dispose();
      setSpreadsheet(undefined);
      // The pane first: it needs a blink, the spreadsheet a second in which nothing else is drawn.
      await nextPaint();
      const place = document.createElement('div');
      place.className = 'spreadsheet';
      container.current!.replaceChildren(place);
      const next = openSpreadsheet(place, opened, known);
      if (!current.current) first.arrive(next.workbook);
      else setPort(next.workbook);
      current.current = next;
      setSpreadsheet(next);
      change({ title, busy: 'Calculating …', notes: opened.notes });
      await next.calculate();
      if (opened.selected && current.current === next) next.select(opened.selected);
    },
    [change, first],
  );

  return { container, current, spreadsheet, port, show };
}

/** What is open in the try-out page, and how something else is opened, or it is saved. */
export function useOpenWorkbook() {
  const [functions, setFunctions] = useState<PageFunctions>();
  const [state, setState] = useState(START);
  const change = useCallback((part: Partial<PageState>) => setState(old => ({ ...old, ...part })), []);
  const { container, current, spreadsheet, port, show } = useShownSpreadsheet(change);

  /** Opens a workbook; where that fails, what was open stays open and the problem is said. */
  const open = useCallback(
    async (title: string, load: () => Promise<OpenedWorkbook>, known: PageFunctions) => {
      change({ busy: `Opening ${title} …`, problem: '' });
      try {
        await show(await load(), title, known);
      } catch (error) {
        change({ problem: sentenceOf(error) });
        if (!current.current) await show(emptyWorkbook(), EMPTY_TITLE, known);
      } finally {
        change({ busy: '' });
      }
    },
    [change, current, show],
  );

  const openNothing = useCallback((known: PageFunctions) => open(EMPTY_TITLE, async () => emptyWorkbook(), known), [open]);

  useEffect(() => {
    const [first] = samples;
    // Asked for before anything else is there.
    const reading = first && readSample(first);
    reading?.catch(() => undefined);
    pageFunctions()
      .then(known => {
        setFunctions(known);
        return first && reading ? open(first.title, () => reading, known) : openNothing(known);
      })
      .catch(error => change({ busy: '', problem: sentenceOf(error) }));
  }, [change, open, openNothing]);

  const unsaved = useUnsaved(spreadsheet, state.title);
  const save = async (): Promise<boolean> => {
    change({ busy: 'Saving …', problem: '' });
    const name = XLSX_NAME.test(state.title) ? state.title : `${state.title || 'workbook'}.xlsx`;
    try {
      downloadFile(await current.current!.save(), name);
      unsaved.settled();
      return true;
    } catch (error) {
      change({ problem: `The workbook could not be saved: ${sentenceOf(error)}` });
      return false;
    } finally {
      change({ busy: '' });
    }
  };
  /** Opens something in the place of what is open, unless the person stays for its unsaved changes. */
  const replace = async (title: string, load: () => Promise<OpenedWorkbook>): Promise<boolean> => {
    if (!functions) return false;
    const answer = await unsaved.farewell();
    if (answer === 'stay' || (answer === 'save' && !(await save()))) return false;
    const before = current.current;
    await open(title, load, functions);
    // Where the file could not be read, what was open is open still, with its changes.
    if (current.current !== before) unsaved.settled();
    return current.current !== before;
  };
  const openSample = async (sample: Sample | undefined) => !!sample && replace(sample.title, () => readSample(sample));
  const openFile = (file: File) => replace(file.name, async () => readBytes(await fileBytes(file), file.name));
  const bringBack = async () => {
    const { left } = unsaved;
    if (left && (await replace(left.title, async () => left.opened))) {
      // Its changes are in no file still: they are kept for this page before those of the one before are forgotten.
      await unsaved.keepNow();
      unsaved.forgetLeft(left.key);
    }
  };
  return {
    ...{ container, functions, spreadsheet, port, state, openSample, openFile, unsaved, bringBack },
    save: () => void save(),
    openEmpty: () => replace(EMPTY_TITLE, async () => emptyWorkbook()),
    onProblem: (problem: string) => change({ problem }),
    workbook: () => current.current?.workbook,
  };
}
