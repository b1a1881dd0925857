/** Time a printer window is given before its frame is taken away (ms). */
const KEPT_MS = 60_000;

/**
 * Opens the browser's print window for a page of our own, in a frame of its own: no scripts, nothing from elsewhere.
 * @returns false where this host has no print window
 */
export function printDocument(html: string): Promise<boolean> {
  return new Promise(resolve => {
    const frame = document.createElement('iframe');
    frame.setAttribute('sandbox', 'allow-same-origin allow-modals');
    frame.setAttribute('aria-hidden', 'true');
    frame.title = 'Page to print';
    frame.style.cssText = 'position:fixed;right:0;bottom:0;width:0;height:0;border:0';
    frame.onload = () => {
      try {
        const view = frame.contentWindow!;
        view.addEventListener('afterprint', () => frame.remove());
        view.focus();
        view.print();
        setTimeout(() => frame.remove(), KEPT_MS);
        resolve(true);
      } catch {
        frame.remove();
        resolve(false);
      }
    };
    frame.srcdoc = html;
    document.body.append(frame);
  });
}
