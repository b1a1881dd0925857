import { sha256 } from '../../core/hash/sha256';
import { OFFICE_ASKED_AGAIN_AFTER_MS, type OfficeFile, type OfficeFileAsker } from '../../workbook/officeFile';
import { requireFileSize, UnreadableTable } from './fileLimits';

/** Beside the page of the pane, on the host of the add-in. */
export const OFFICE_FILE = 'catalogue/current.xlsx';
const NOT_THERE: ReadonlySet<number> = new Set([404, 410]);

/** What a browser gives for an address; its own `fetch` where there is one. */
export type Fetcher = (address: string, wishes: { readonly cache: 'no-cache' }) => Promise<Response>;

/** Why what came is not the office's workbook; undefined where it may be. */
function whyUnusable({ headers }: Response, bytes: number): string | undefined {
  if (/\bhtml\b/i.test(headers.get('content-type') ?? '')) return `${OFFICE_FILE} is a web page, not a workbook`;
  try {
    requireFileSize(OFFICE_FILE, bytes);
    return undefined;
  } catch (error) {
    if (error instanceof UnreadableTable) return error.message;
    throw error;
  }
}

/** The file of an answer; one that is as the last one was is the last one. */
async function fileOf(answer: Response, last: OfficeFile | undefined): Promise<OfficeFile> {
  if (NOT_THERE.has(answer.status)) return { status: 'none' };
  if (!answer.ok) return { status: 'unreachable', reason: `its host answers with error ${answer.status}` };
  const announced = whyUnusable(answer, Number(answer.headers.get('content-length') ?? 0));
  if (announced) {
    await answer.body?.cancel();
    return { status: 'unusable', reason: announced };
  }
  const bytes = new Uint8Array(await answer.arrayBuffer());
  const reason = whyUnusable(answer, bytes.length);
  if (reason) return { status: 'unusable', reason };
  const tag = answer.headers.get('etag') ?? sha256(bytes);
  return last?.status === 'there' && last.tag === tag ? last : { status: 'there', name: OFFICE_FILE, bytes, tag };
}

/**
 * Asks the add-in's own host for the office's catalogue: when it is first wanted, and not more than once an hour. `no-cache` lets the
 * browser ask whether its copy is still good (RFC 9111, section 5.2.1.4; RFC 9110, section 13.1.2), so that an unchanged file does not
 * travel again.
 * @returns what asks; it never fails
 */
export function officeFileAsker(fetcher: Fetcher, now: () => number = Date.now): OfficeFileAsker {
  let [asked, answered]: [number, Promise<OfficeFile> | undefined] = [0, undefined];
  const ask = async (last: OfficeFile | undefined): Promise<OfficeFile> => {
    try {
      return await fileOf(await fetcher(OFFICE_FILE, { cache: 'no-cache' }), last);
    } catch {
      // What came an hour ago is as good as it was.
      return last?.status === 'there' ? last : { status: 'unreachable', reason: 'no connection' };
    }
  };
  return () => {
    if (answered && now() - asked < OFFICE_ASKED_AGAIN_AFTER_MS) return answered;
    const before = answered;
    asked = now();
    answered = (async () => ask(await before))();
    return answered;
  };
}
