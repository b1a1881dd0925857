import { useCallback, useEffect, useRef, useState } from 'react';
import type { OpenedWorkbook } from '../xlsx/readXlsx';
import { awaitSuggestions } from './awaitSuggestions';
import { EMPTY_TITLE, emptyWorkbook } from './emptyWorkbook';
import { ErrorTip } from './ErrorTip';
import { fileBytes } from './fileBytes';
import { pageFunctions, type PageFunctions } from './pageFunctions';
import { PaneDock } from './PaneDock';
import { sampleBytes, samples, type Sample } from './samples';
import { saveFile } from './saveFile';
import type { Spreadsheet } from './spreadsheet';
import { StatusLine } from './StatusLine';
import { TopBar } from './TopBar';
import { TourBar } from './TourBar';
import { useTour } from './useTour';

const XLSX_NAME = /\.xlsx$/i;

function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

async function readBytes(bytes: Uint8Array, title: string): Promise<OpenedWorkbook> {
  const { readXlsx } = await import(/* webpackChunkName: "xlsx" */ '../xlsx/readXlsx');
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

/** The whole try-out page: what it is, the spreadsheet, the task pane, and a line that says what is wrong in the selected cell. */
export function App() {
  const container = useRef<HTMLDivElement>(null);
  const current = useRef<Spreadsheet | undefined>(undefined);
  const [functions, setFunctions] = useState<PageFunctions>();
  const [spreadsheet, setSpreadsheet] = useState<Spreadsheet>();
  const [state, setState] = useState(START);
  const change = useCallback((part: Partial<PageState>) => setState(old => ({ ...old, ...part })), []);

  const show = useCallback(
    async (opened: OpenedWorkbook, title: string, known: PageFunctions) => {
      const { openSpreadsheet } = await import(/* webpackChunkName: "spreadsheet" */ './spreadsheet');
      current.current?.dispose();
      setSpreadsheet(undefined);
      const place = document.createElement('div');
      place.className = 'spreadsheet';
      container.current!.replaceChildren(place);
      const next = openSpreadsheet(place, opened, known);
      current.current = next;
      setSpreadsheet(next);
      change({ title, busy: 'Calculating …', notes: opened.notes });
      await next.calculate();
    },
    [change],
  );

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
    [change, show],
  );

  const openEmpty = useCallback((known: PageFunctions) => open(EMPTY_TITLE, async () => emptyWorkbook(), known), [open]);

  useEffect(() => {
    pageFunctions()
      .then(known => {
        setFunctions(known);
        const [first] = samples;
        return first ? open(first.title, () => readSample(first), known) : openEmpty(known);
      })
      .catch(error => change({ busy: '', problem: sentenceOf(error) }));
  }, [change, open, openEmpty]);

  useEffect(awaitSuggestions, []);

  const openSample = async (sample: Sample | undefined) => {
    if (functions && sample) await open(sample.title, () => readSample(sample), functions);
  };
  const tour = useTour({
    openSample: file => openSample(samples.find(sample => sample.file === file)),
    workbook: () => current.current?.workbook,
    onProblem: problem => change({ problem }),
  });
  const openFile = (file: File) => {
    tour.close();
    if (functions) void open(file.name, async () => readBytes(await fileBytes(file), file.name), functions);
  };
  const save = () => {
    change({ busy: 'Saving …', problem: '' });
    const name = XLSX_NAME.test(state.title) ? state.title : `${state.title || 'workbook'}.xlsx`;
    void current
      .current!.save()
      .then(bytes => saveFile(bytes, name))
      .catch(error => change({ problem: `The workbook could not be saved: ${sentenceOf(error)}` }))
      .finally(() => change({ busy: '' }));
  };

  return (
    <div
      className="page"
      onDragOver={dragged => dragged.preventDefault()}
      onDrop={dropped => {
        const [file] = dropped.dataTransfer.files;
        if (!file) return;
        dropped.preventDefault();
        openFile(file);
      }}
    >
      <TopBar
        title={state.title}
        ready={!!spreadsheet}
        onSample={sample => {
          tour.close();
          void openSample(sample);
        }}
        onEmpty={() => {
          tour.close();
          if (functions) void openEmpty(functions);
        }}
        onFile={openFile}
        onSave={save}
        onTour={tour.open}
      />
      {tour.isOpen && (
        <TourBar
          tour={tour.tour}
          step={tour.step}
          busy={tour.busy}
          onStart={tour.start}
          onStep={tour.show}
          onClose={tour.close}
        />
      )}
      {state.problem && (
        <div className="problem" role="alert">
          <span>{state.problem}</span>
          <button type="button" onClick={() => change({ problem: '' })}>
            Close
          </button>
        </div>
      )}
      <div className="middle">
        <main className="sheet" ref={container} aria-label="Try-out sheet" />
        <PaneDock workbook={spreadsheet?.workbook} functions={functions?.file.functions ?? []} wanted={tour.wanted} />
      </div>
      <StatusLine spreadsheet={spreadsheet} busy={state.busy} notes={state.notes} />
      <ErrorTip spreadsheet={spreadsheet} />
    </div>
  );
}
