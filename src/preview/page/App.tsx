import { useEffect } from 'react';
import { awaitSuggestions } from './awaitSuggestions';
import { ErrorTip } from './ErrorTip';
import { LeftBehind } from './LeftBehind';
import { PaneDock } from './PaneDock';
import { samples } from './samples';
import { StatusLine } from './StatusLine';
import { TopBar } from './TopBar';
import { TourBar } from './TourBar';
import { UnsavedDialog } from './UnsavedDialog';
import { useOpenWorkbook } from './useOpenWorkbook';
import { useTour } from './useTour';

/** The whole try-out page: what it is, the spreadsheet, the task pane, and a line that says what is wrong in the selected cell. */
export function App() {
  const { container, functions, spreadsheet, state, ...page } = useOpenWorkbook();
  useEffect(awaitSuggestions, []);
  const tour = useTour({
    openSample: file => page.openSample(samples.find(sample => sample.file === file)),
    uncounted: page.unsaved.uncounted,
    workbook: page.workbook,
    onProblem: page.onProblem,
  });
  const { unsaved } = page;
  const closeTourAfter = (opening: Promise<boolean>) => void opening.then(isOpened => isOpened && tour.close());
  const openFile = (file: File) => closeTourAfter(page.openFile(file));
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
        onSample={sample => closeTourAfter(page.openSample(sample))}
        onEmpty={() => closeTourAfter(page.openEmpty())}
        onFile={openFile}
        onSave={page.save}
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
      {unsaved.left && (
        <LeftBehind
          kept={unsaved.left}
          isReady={!!spreadsheet}
          onBringBack={() => void page.bringBack()}
          onThrowAway={() => unsaved.forgetLeft(unsaved.left!.key)}
        />
      )}
      {state.problem && (
        <div className="problem" role="alert">
          <span>{state.problem}</span>
          <button type="button" onClick={() => page.onProblem('')}>
            Close
          </button>
        </div>
      )}
      <div className="middle">
        <main className="sheet" ref={container} aria-label="Try-out sheet" />
        <PaneDock workbook={page.port} functions={functions?.file.functions ?? []} wanted={tour.wanted} />
      </div>
      <StatusLine spreadsheet={spreadsheet} busy={state.busy} notes={state.notes} />
      <UnsavedDialog title={state.title} onAnswer={unsaved.asking} />
      <ErrorTip spreadsheet={spreadsheet} />
    </div>
  );
}
