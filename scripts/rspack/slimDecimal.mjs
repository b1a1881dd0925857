/** Methods of decimal.js that no worksheet function calls (a test holds the sources against this list); those of the prototype have long names. */
export const UNUSED_METHODS = {
  clampedTo: 'clamp',
  decimalPlaces: 'dp',
  cosine: 'cos',
  cubeRoot: 'cbrt',
  hyperbolicCosine: 'cosh',
  hyperbolicSine: 'sinh',
  hyperbolicTangent: 'tanh',
  inverseCosine: 'acos',
  inverseHyperbolicCosine: 'acosh',
  inverseHyperbolicSine: 'asinh',
  inverseHyperbolicTangent: 'atanh',
  inverseSine: 'asin',
  inverseTangent: 'atan',
  isPositive: 'isPos',
  logarithm: 'log',
  modulo: 'mod',
  precision: 'sd',
  naturalExponential: 'exp',
  naturalLogarithm: 'ln',
  sine: 'sin',
  round: 'round',
  tangent: 'tan',
  toExponential: 'toExponential',
  toPower: 'pow',
  truncated: 'trunc',
  toBinary: 'toBinary',
  toFraction: 'toFraction',
  toHexadecimal: 'toHex',
  toOctal: 'toOctal',
};
/** Second names of methods that stay, which no source calls. */
export const UNUSED_NAMES = (
  'absoluteValue comparedTo dividedBy dividedToIntegerBy equals greaterThan greaterThanOrEqualTo isInt lessThan lessThanOrEqualTo mul neg ' +
  'squareRoot sub toDP toSD'
).split(' ');
/** Functions of the class that go with them. */
export const UNUSED_STATICS =
  'acos acosh asin asinh atan atanh atan2 cbrt clamp cos cosh exp hypot ln log log10 log2 mod pow random round sin sinh tan tanh trunc'.split(
    ' ',
  );
/** Functions of the class whose methods of the same name stay. */
export const UNUSED_OF_CLASS = 'abs add ceil div floor mul sign sqrt sub'.split(' ');
/** Functions of the module that only they call. */
const INNER = (
  'checkRoundingDigits convertBase cosine getLn10 getPi getPrecision intPow isOdd naturalExponential naturalLogarithm sine taylorSeries tinyPow ' +
  'toLessThanHalfPi toStringBinary'
).split(' ');
/** Texts in other number systems, Infinity and NaN: readers of cells let none of them through. */
const OTHER_TEXT = /^function parseOther\(/m;

/** Takes out the text from the first match of a pattern to the next line that begins with `end`. */
function without(source, pattern, end) {
  const start = source.search(pattern);
  if (start < 0) throw new Error(`decimal.js has changed: no ${pattern}`);
  return source.slice(0, start) + source.slice(source.indexOf(`\n${end}`, start) + 1 + end.length);
}

/** Puts a text in place of the first match of a pattern. */
function replaced(source, pattern, text) {
  if (!pattern.test(source)) throw new Error(`decimal.js has changed: no ${pattern}`);
  return source.replace(pattern, text);
}

/** Without the tests of arguments that the compiler holds (places, ways of rounding, `new`) and of settings that are never in part. */
function withoutChecks(source) {
  let slim = source
    .replace(/^ *(?:else )?checkInt32\(.*$/gm, '')
    .replace(/^ *Decimal\.(?:ROUND_(?:DOWN|HALF_DOWN|HALF_EVEN|HALF_CEIL)|EUCLID|isDecimal) = .*$/gm, '');
  slim = replaced(slim, /^ *if \(!\(x instanceof Decimal\)\).*$/m, '');
  slim = replaced(slim, /^ {2}if \(obj\) \{\n {4}if \(obj\.defaults[^]*?\n {2}\}$/m, '');
  // Whole numbers of BigInt are reckoned with by themselves.
  slim = replaced(slim, /^ {4}if \(t === 'bigint'\) \{[^]*?\n {4}\}$/m, '');
  // A number to copy, and one below ten million, is within the limits of exponents.
  slim = replaced(slim, /^ {6}if \(external\) \{[^]*?\n {6}\} else \{([^]*?)\n {6}\}$/m, '$1');
  return replaced(slim, /^ {8}if \(external\) \{[^]*?\n {8}\} else \{([^]*?)\n {8}\}$/m, '$1');
}

/**
 * Loader: decimal.mjs without what the worksheet functions never call, a third of its bytes. Its methods hang on a prototype, so that a minifier
 * cannot know that nobody calls them.
 */
export default function slimDecimal(source) {
  let slim = source.replace(/\r\n/g, '\n');
  for (const name of Object.keys(UNUSED_METHODS)) slim = without(slim, new RegExp(`^P\\.${name} = `, 'm'), '};');
  for (const name of [...INNER, ...UNUSED_STATICS, ...UNUSED_OF_CLASS])
    slim = without(slim, new RegExp(`^function ${name}\\(`, 'm'), '}');
  slim = `${without(slim, OTHER_TEXT, '}')}\nfunction parseOther(x, str) {\n  throw Error(invalidArgument + str);\n}\n`;
  for (const name of [...UNUSED_STATICS, ...UNUSED_OF_CLASS])
    slim = slim.replace(new RegExp(`^ *Decimal\\.${name} = .*$`, 'm'), '');
  for (const name of UNUSED_NAMES)
    slim = replaced(slim, new RegExp(`^P\\.${name} = (?=P\\.)|(?<=^P\\.\\w+ = )P\\.${name} = `, 'm'), '');
  slim = withoutChecks(slim);
  // Settings are those of core/units/decimal.ts: nothing to check.
  slim = `${without(slim, /^function config\(/m, '}')}\nfunction config(set) {\n  return Object.assign(this, DEFAULTS, set);\n}\n`;
  // ln 10 and π, each of a thousand digits, go with the functions that need them.
  return slim
    .replace(/^ *(?:LN10|PI) = (?:'.*',|new .*)$/gm, '')
    .replace(/^ *(?:LN10|PI)_PRECISION = .*$/gm, '')
    .replace(/^P\[Symbol.*$/gm, '');
}
