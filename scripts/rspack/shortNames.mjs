import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = fileURLToPath(new URL('../..', import.meta.url));
const require = createRequire(import.meta.url);

/** Sources whose members are read by our own sources alone, but for what the next lists name. */
const OWN = ['src/core', 'src/cells', 'src/functions'];
/** Sources that speak with Excel, with a worker or with the task pane, whose members keep their names. */
const HOST = ['src/host/catalogue', 'src/host/cutplan', 'src/workbook'];
/** What a worker is given and gives back, by name. */
const SENT = ['src/core/cutplan/cutPlan.ts', 'src/core/tradeError.ts'];
/** Members of Excel's cells and of Node's Error, which no list of types here has. */
const OTHERS = ['basicType', 'basicValue', 'errorType', 'stackTraceLimit', 'aborted', 'associate'];

const filesOf = folder =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter(name => /\.tsx?$/.test(name))
    .map(name => join(root, folder, name));

const known = new Map();
/** The syntax tree of a file, which is read once. */
function parsed(file) {
  if (!known.has(file)) known.set(file, ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true));
  return known.get(file);
}

/** All nodes of a file. */
function* nodesOf(file) {
  const open = [file];
  for (let node = open.pop(); node; node = open.pop()) {
    yield node;
    ts.forEachChild(node, child => void open.push(child));
  }
}

/** The name of a member that a node declares, reads or takes apart. */
function memberName(node) {
  const { parent } = node;
  if (!ts.isIdentifier(node)) return undefined;
  if (ts.isBindingElement(parent)) {
    return ts.isObjectBindingPattern(parent.parent) && (parent.propertyName ?? parent.name) === node ? node.text : undefined;
  }
  const isMember =
    ts.isPropertyAccessExpression(parent) ||
    ts.isObjectLiteralElementLike(parent) ||
    ts.isClassElement(parent) ||
    ts.isTypeElement(parent) ||
    (ts.isParameter(parent) && parent.modifiers?.length);
  return isMember && parent.name === node ? node.text : undefined;
}

const readings = files => files.flatMap(file => [...nodesOf(parsed(file))].map(memberName).filter(Boolean));
const membersOf = files => new Set(readings(files));

/** Texts in files: a member may be looked up by one. */
function textsOf(files) {
  const isText = node => ts.isStringLiteralLike(node) && !ts.isImportDeclaration(node.parent);
  return new Set(files.flatMap(file => [...nodesOf(parsed(file))].filter(isText).map(({ text }) => text)));
}

/** Members of the language itself. */
function languageNames() {
  const folder = dirname(require.resolve('typescript'));
  return membersOf(
    readdirSync(folder)
      .filter(name => /^lib\.(?:es5|es20\d\d(?:\..+)?|decorators.*)\.d\.ts$/.test(name))
      .map(name => join(folder, name)),
  );
}

/** Names that our own sources read from something that is not ours (a message port, Excel) or whose type is not known. */
function foreignNames(files) {
  const { options } = ts.parseJsonConfigFileContent(
    ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile).config,
    ts.sys,
    root,
  );
  const program = ts.createProgram(files, { ...options, types: ['custom-functions-runtime'] });
  const checker = program.getTypeChecker();
  const ours = new Set(files);
  // Members of decimal.js get short names with ours.
  const isOwn = file => ours.has(file) || /\/decimal\.js\//.test(file);
  const isForeign = symbol => !symbol?.declarations || symbol.declarations.some(one => !isOwn(one.getSourceFile().fileName));
  const names = new Set();
  for (const file of files) {
    for (const node of nodesOf(program.getSourceFile(file))) {
      const name = memberName(node);
      if (!name) continue;
      const { parent } = node;
      const symbol = ts.isBindingElement(parent)
        ? checker.getTypeAtLocation(parent.parent).getProperty(name)
        : checker.getSymbolAtLocation(node);
      const wanted = ts.isObjectLiteralElementLike(parent) && checker.getContextualType(parent.parent)?.getProperty(name);
      if (isForeign(symbol) || (wanted && isForeign(wanted))) names.add(name);
    }
  }
  return names;
}

/** Letters by how often English has them: texts and names then share their bits. */
const LETTERS = 'etnsiraolcduhmfgpwvbkyxjqz';

/** The names a, b, … z, aa, ab, … of small letters alone, which a server packs tighter than those of all letters and digits; a minifier's own form. */
export const smallLetters = {
  get(number) {
    let name = '';
    for (let left = number + 1; left > 0; left = Math.floor((left - 1) / LETTERS.length))
      name += LETTERS[(left - 1) % LETTERS.length];
    return name;
  },
  consider() {},
  reset() {},
  sort() {},
};

/**
 * Members that only the worksheet functions' own sources and decimal.js read, each with a short name, the most frequent with the shortest: none is
 * one of the language, of what Excel, the pane or a worker gets, or stands as a text by which it could be looked up.
 * @returns {Map<string, string>}
 */
export function shortNames() {
  const decimal = require.resolve('decimal.js/decimal.mjs');
  const ours = OWN.flatMap(filesOf);
  const own = [...ours, decimal];
  const host = HOST.flatMap(filesOf);
  const runtime = join(root, 'node_modules/@types/custom-functions-runtime/index.d.ts');
  const read = readings(own);
  const foreign = membersOf([...host, ...SENT.map(file => join(root, file)), runtime]);
  const kept = [languageNames(), foreignNames(ours), foreign, textsOf([...own, ...host]), new Set(OTHERS)];
  const counts = new Map();
  for (const name of read) {
    if (/^[a-z]\w{2,}$/.test(name) && !kept.some(names => names.has(name))) counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  const taken = new Set([...read, ...foreign]);
  const names = [...counts.keys()].sort((a, b) => counts.get(b) - counts.get(a));
  let next = 0;
  const free = () => {
    for (;;) {
      const name = smallLetters.get(next++);
      if (!taken.has(name)) return name;
    }
  };
  return new Map(names.map(name => [name, free()]));
}
