import { withReferences } from './references';
import { NotNative } from './notNative';

/** Functions that every spreadsheet program of the last twenty years has, with the same name and meaning. */
const CLASSIC = new Set(
  `ABS ACOS AND ASIN ATAN ATAN2 AVERAGE AVERAGEIF AVERAGEIFS CEILING CHAR CHOOSE CODE COLUMN COLUMNS CONCATENATE COS COUNT COUNTA COUNTBLANK
   COUNTIF COUNTIFS DATE DATEVALUE DAY DAYS360 DEGREES EDATE EOMONTH EVEN EXACT EXP FALSE FIND FIXED FLOOR HLOOKUP HOUR IF IFERROR INDEX
   INT ISBLANK ISERR ISERROR ISEVEN ISLOGICAL ISNA ISNUMBER ISODD ISTEXT LARGE LEFT LEN LN LOG LOG10 LOOKUP LOWER MATCH MAX MEDIAN MID MIN
   MINUTE MOD MONTH N NA NETWORKDAYS NORMDIST NOT NOW ODD OR PERCENTILE PI POWER PRODUCT PROPER QUARTILE RADIANS RANK REPLACE REPT RIGHT
   ROUND ROUNDDOWN ROUNDUP ROW ROWS SEARCH SECOND SIGN SIN SMALL SQRT STDEV STDEVP SUBSTITUTE SUBTOTAL SUM SUMIF SUMIFS SUMPRODUCT SUMSQ T
   TAN TEXT TIME TIMEVALUE TODAY TRIM TRUE TRUNC UPPER VALUE VAR VARP VLOOKUP WEEKDAY WEEKNUM WORKDAY YEAR`
    .split(/\s+/)
    .filter(name => name !== ''),
);

/** Longest formula that a file may hold. */
const LONGEST = 8192;

/** Refuses a formula that no file may hold. */
export function requireLength(formula: string): void {
  if (formula.length > LONGEST) throw new NotNative('the formula would be too long');
}

const WITHOUT_TEXTS = /"(?:[^"]|"")*"|'(?:[^']|'')*'!/g;

/**
 * Refuses a formula that some program does not know.
 * @param formula names of ranges replaced by their addresses
 * @throws NotNative
 */
export function requirePortable(formula: string): void {
  const bare = formula.replace(WITHOUT_TEXTS, '""');
  if (/[[\]]/.test(bare)) throw new NotNative('it names a table or another workbook');
  if (/#REF!|[#@]/.test(bare.replace(/#(?:N\/A|VALUE!|DIV\/0!|NUM!|NULL!)/g, '')))
    throw new NotNative('it spills, or a cell it named is gone');
  const unknown = [...bare.matchAll(/([\p{L}_][\p{L}\p{N}_.]*)\s*\(/gu)].find(([, name]) => !CLASSIC.has(name!.toUpperCase()));
  if (unknown) throw new NotNative(`not every program has the function ${unknown[1]!.toUpperCase()}`);
  const words = withReferences(bare, () => '').replace(/\b\d+(?:\.\d*)?(?:E[-+]?\d+)?/gi, '');
  const name = /(?<![\p{L}\p{N}_.])(?!(?:TRUE|FALSE)\b)([\p{L}_][\p{L}\p{N}_.]*)(?!\s*\(|[\p{L}\p{N}_.])/iu.exec(
    words.replace(/#[A-Z0-9/]+[!?]?/g, ''),
  );
  if (name) throw new NotNative(`the name ${name[1]} is no range of this workbook`);
}
