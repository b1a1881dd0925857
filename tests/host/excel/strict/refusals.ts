/** What Excel refuses; a test sets it, and puts it back. */

/** Cells that fit into one answer; Infinity = no limit, as in Excel on the desktop. */
export const answerLimit = { cells: Infinity, code: 'ResponsePayloadSizeLimitExceeded' };

/**
 * Bytes in one request of Excel on the web.
 * Source: learn.microsoft.com, office/dev/add-ins/excel/performance, "Payload size limit best practices": 5 MB for requests and responses.
 */
export const MOST_REQUEST_BYTES = 5_000_000;
/** What an operation weighs besides its cells, with the paths of its objects: generous, no published value. */
export const OPERATION_BYTES = 500;

/** Excel refuses what matches the first of these, then the next; what stood before it in the batch is written, what stands behind it is not. */
export const refusal: { of: RegExp[]; code: string } = { of: [], code: 'AccessDenied' };

/** Whether sheets may be added and removed. */
export const structure = { protected: false };

export const refused = (message: string, code: string): Error => Object.assign(new Error(message), { code });

/** Versions of ExcelApi that this Excel has besides those it must have; a test sets them, and puts them back. */
export const excelApi = { supported: [] as string[] };
