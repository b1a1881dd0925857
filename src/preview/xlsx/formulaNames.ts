const TEXT_OR_NAME = /"(?:[^"]|"")*"|'(?:[^']|'')*'|(?<![A-Za-z0-9_.])(?:HOSE\.|_xldudf_HOSE_)(?=[A-Z0-9]+\s*\()/gi;

function renamed(formula: string, prefix: string): string {
  return formula.replace(TEXT_OR_NAME, found => (/^["']/.test(found) ? found : prefix));
}

/**
 * A formula as a file stores it: `HOSE.CUTLENGTH(B1)` is `_xldudf_HOSE_CUTLENGTH(B1)`.
 * Texts and quoted sheet names in it stay as they are.
 */
export function formulaForFile(formula: string): string {
  return renamed(formula, '_xldudf_HOSE_');
}

/** A stored formula as people type it: the way back. */
export function formulaFromFile(formula: string): string {
  return renamed(formula, 'HOSE.');
}
