import ts from 'typescript';
import { textOf } from './tree.ts';

export interface ExportedFunction {
  path: string;
  name: string;
  /** Text of the declared return type; empty where none is declared. */
  returns: string;
  /** The doc comment without its stars; empty where there is none. */
  doc: string;
}

/** The functions that a file exports by declaration or as a constant arrow. */
export function exportedFunctions(path: string): ExportedFunction[] {
  const file = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true);
  return file.statements.filter(isExported).flatMap((statement) => {
    const doc = docOf(statement);
    return namedFunctions(statement).map(({ name, node }) => ({
      path,
      name,
      returns: node.type?.getText() ?? '',
      doc,
    }));
  });
}

function isExported(statement: ts.Statement): boolean {
  return (
    ts.canHaveModifiers(statement) &&
    (ts.getModifiers(statement) ?? []).some((modifier) => modifier.kind === ts.SyntaxKind.ExportKeyword)
  );
}

function namedFunctions(statement: ts.Statement): { name: string; node: ts.SignatureDeclaration }[] {
  if (ts.isFunctionDeclaration(statement)) {
    return statement.name ? [{ name: statement.name.text, node: statement }] : [];
  }
  if (!ts.isVariableStatement(statement)) return [];
  return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
    initializer && ts.isArrowFunction(initializer) ? [{ name: name.getText(), node: initializer }] : [],
  );
}

function docOf(statement: ts.Statement): string {
  const comments = ts.getJSDocCommentsAndTags(statement).filter(ts.isJSDoc);
  return (
    comments
      .at(-1)
      ?.getText()
      .replace(/^\/\*\*|\*\/$/g, '')
      .replace(/^[ \t]*\* ?/gm, '')
      .trim() ?? ''
  );
}
