import { isSilentPane } from '../excel/isSilentPane';

/** Time a printer window is given before its frame is taken away (ms). */
const KEPT_MS = 60_000;
/** Time in which a host that prints says so (ms): it may do so after the call has returned. */
const BEGIN_MS = 4000;

/** Whether this host has a print window; asked when it is shown, since the host is known only then. */
export const canPrint = (): boolean => typeof document !== 'undefined' && !isSilentPane();

/** Prints the page in the frame; whether the host has begun to. */
async function begun(view: Window): Promise<boolean> {
  const began = new Promise<boolean>(resolve => {
    view.addEventListener('beforeprint', () => resolve(true));
    setTimeout(() => resolve(false), BEGIN_MS);
  });
  view.focus();
  view.print();
  return began;
}

/**
 * Opens the browser's print window for a page of our own, in a frame of its own: no scripts, nothing from elsewhere. It counts as opened
 * when the host says that it prints (`beforeprint`): one without a print window returns as if it had.
 * @returns false where this host has no print window, or does not open it
 */
export function printDocument(html: string): Promise<boolean> {
  if (!canPrint()) return Promise.resolve(false);
  return new Promise(resolve => {
    const frame = document.createElement('iframe');
    frame.setAttribute('sandbox', 'allow-same-origin allow-modals');
    frame.setAttribute('aria-hidden', 'true');
    frame.title = 'Page to print';
    frame.style.cssText = 'position:fixed;right:0;bottom:0;width:0;height:0;border:0';
    const end = (isBegun: boolean) => {
      if (!isBegun) frame.remove();
      resolve(isBegun);
    };
    frame.onload = () => {
      const view = frame.contentWindow!;
      view.addEventListener('afterprint', () => frame.remove());
      setTimeout(() => frame.remove(), KEPT_MS);
      begun(view).then(end, () => end(false));
    };
    frame.srcdoc = html;
    document.body.append(frame);
  });
}
