import { useEffect } from 'react';
import { awaitSuggestions } from './awaitSuggestions';
import { ErrorTip } from './ErrorTip';
import { PaneDock } from './PaneDock';
import { samples } from './samples';
import { StatusLine } from './StatusLine';
import { TopBar } from './TopBar';
import { TourBar } from './TourBar';
import { useOpenWorkbook } from './useOpenWorkbook';
import { useTour } from './useTour';

/** The whole try-out page: what it is, the spreadsheet, the task pane, and a line that says what is wrong in the selected cell. */
export function App() {
  const { container, functions, spreadsheet, state, ...page } = useOpenWorkbook();
  useEffect(awaitSuggestions, []);
  const tour = useTour({
    openSample: file => page.openSample(samples.find(sample => sample.file === file)),
    workbook: page.workbook,
    onProblem: page.onProblem,
  });
  const openFile = (file: File) => {
    tour.close();
    page.openFile(file);
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
          void page.openSample(sample);
        }}
        onEmpty={() => {
          tour.close();
          page.openEmpty();
        }}
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
      <ErrorTip spreadsheet={spreadsheet} />
    </div>
  );
}
