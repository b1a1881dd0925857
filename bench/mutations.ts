import ts from 'typescript';

/** One small change of a source that a test should notice. */
export interface Mutation {
  readonly kind: string;
  readonly start: number;
  readonly end: number;
  readonly replacement: string;
}

const OPERATORS: Readonly<Record<string, readonly [kind: string, swapped: string]>> = {
  '<': ['comparison', '<='],
  '<=': ['comparison', '<'],
  '>': ['comparison', '>='],
  '>=': ['comparison', '>'],
  '===': ['comparison', '!=='],
  '!==': ['comparison', '==='],
  '+': ['arithmetic', '-'],
  '-': ['arithmetic', '+'],
  '*': ['arithmetic', '/'],
  '/': ['arithmetic', '*'],
  '%': ['arithmetic', '*'],
  '+=': ['arithmetic', '-='],
  '-=': ['arithmetic', '+='],
  '&&': ['boolean', '||'],
  '||': ['boolean', '&&'],
};

/** Methods with an opposite: those of Math, of decimals and of lists. */
const METHODS: Readonly<Record<string, readonly [kind: string, swapped: string]>> = {
  min: ['min or max', 'max'],
  max: ['min or max', 'min'],
  floor: ['rounding', 'ceil'],
  ceil: ['rounding', 'floor'],
  plus: ['arithmetic', 'minus'],
  minus: ['arithmetic', 'plus'],
  times: ['arithmetic', 'div'],
  div: ['arithmetic', 'times'],
  lt: ['comparison', 'lte'],
  lte: ['comparison', 'lt'],
  gt: ['comparison', 'gte'],
  gte: ['comparison', 'gt'],
};

const isText = (node: ts.Node) => ts.isStringLiteralLike(node) || ts.isTemplateExpression(node);

/** A number, an operator or a called method that is put in another one's place. */
function swapped(node: ts.Node): Mutation[] {
  const put = (kind: string, at: ts.Node, replacement: string) => ({ kind, start: at.getStart(), end: at.end, replacement });
  if (ts.isNumericLiteral(node)) {
    return [1, -1].map(by => put('number', node, by < 0 && node.text === '0' ? '(-1)' : String(Number(node.text) + by)));
  }
  if (ts.isBinaryExpression(node)) {
    const found = OPERATORS[node.operatorToken.getText()];
    // Texts are joined by +, too: nothing else would be a sentence.
    if (!found || (found[0] === 'arithmetic' && (isText(node.left) || isText(node.right)))) return [];
    return [put(found[0], node.operatorToken, found[1])];
  }
  if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
    const { name } = node.expression;
    if (name.text === 'filter' && node.arguments[0]) return [put('filter', node.arguments[0], '() => true')];
    const found = Object.hasOwn(METHODS, name.text) && METHODS[name.text];
    if (found) return [put(found[0], name, found[1])];
  }
  return [];
}

/** A condition turned round. */
function negated(node: ts.Node): Mutation[] {
  if (!ts.isIfStatement(node) && !ts.isConditionalExpression(node) && !ts.isWhileStatement(node)) return [];
  const condition = ts.isConditionalExpression(node) ? node.condition : node.expression;
  const text = condition.getText();
  const isNot = ts.isPrefixUnaryExpression(condition) && condition.operator === ts.SyntaxKind.ExclamationToken;
  const replacement = isNot ? condition.operand.getText() : `!(${text})`;
  return [{ kind: 'negated condition', start: condition.getStart(), end: condition.end, replacement }];
}

/** A statement left out: one that acts, or one that leaves early. */
function dropped(node: ts.Node): Mutation[] {
  const leaves = ts.isReturnStatement(node) || ts.isThrowStatement(node) || ts.isContinueStatement(node);
  const isLast = leaves && ts.isBlock(node.parent) && ts.isFunctionLike(node.parent.parent);
  if (!ts.isExpressionStatement(node) && (!leaves || isLast)) return [];
  return [{ kind: 'dropped statement', start: node.getStart(), end: node.end, replacement: '{}' }];
}

/** All mutations of a source, and how many statements it has. */
export function mutationsOf(file: string, source: string): { mutations: Mutation[]; statements: number } {
  const mutations: Mutation[] = [];
  let statements = 0;
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node))
      return;
    if (ts.isStatement(node) && !ts.isBlock(node)) statements += 1;
    mutations.push(...swapped(node), ...negated(node), ...dropped(node));
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, source, ts.ScriptTarget.ES2022, true));
  return { mutations, statements };
}
