import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const read = ts.readConfigFile(fileURLToPath(new URL('../../tsconfig.json', import.meta.url)), ts.sys.readFile);
const { options } = ts.convertCompilerOptionsFromJson({ ...read.config.compilerOptions, noEmit: false }, '');

/** One word for all variables packs better than two; the compiler has told apart by then what may change. */
function constToLet(context) {
  const visit = node => {
    const seen = ts.visitEachChild(node, visit, context);
    const isConst = ts.isVariableDeclarationList(seen) && (seen.flags & ts.NodeFlags.BlockScoped) === ts.NodeFlags.Const;
    return isConst ? context.factory.createVariableDeclarationList(seen.declarations, ts.NodeFlags.Let) : seen;
  };
  return file => ts.visitNode(file, visit);
}

/** Loader: a source of the worksheet functions, compiled as `tsconfig.json` says by TypeScript itself, in a form that packs well. */
export default function compactTypeScript(source) {
  const compiled = ts.transpileModule(source, {
    fileName: this.resourcePath,
    compilerOptions: options,
    transformers: { after: [constToLet] },
  });
  const script = compiled.outputText.replace(/^\/\/# sourceMappingURL=.*/m, '');
  this.callback(null, script, compiled.sourceMapText);
}
