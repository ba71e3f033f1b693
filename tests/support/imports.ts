import { readdirSync, readFileSync } from "node:fs";
import { posix } from "node:path";
import ts from "typescript";

/** One import of one file; types count like values. */
export interface Import {
  /** Path of the importing file under the repository, such as "src/core/rows/rows.ts". */
  readonly file: string;
  /** What is imported: a path of the same form for our own files, a package name or "node:fs" for others. */
  readonly target: string;
  /** Names taken from it; "*" for all of it. */
  readonly names: readonly string[];
  readonly isType: boolean;
  readonly isReExport: boolean;
}

/** Every import under a folder, read with the compiler: import and export declarations, import() and import types. */
export function readImports(folder: string): readonly Import[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => posix.join(folder, name.replaceAll("\\", "/")))
    .filter((file) => /\.tsx?$/.test(file))
    .sort()
    .flatMap((file) => importsOf(file, readFileSync(file, "utf8")));
}

/** The imports of one file's text. */
export function importsOf(file: string, text: string): readonly Import[] {
  const found: Import[] = [];
  const add = (specifier: string, names: readonly string[], isType: boolean, isReExport = false) =>
    found.push({ file, target: resolved(file, specifier), names, isType, isReExport });
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
      const { names, isType } = namesOf(node.importClause);
      add(node.moduleSpecifier.text, names, isType);
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) {
      const clause = node.exportClause;
      const names = clause && ts.isNamedExports(clause) ? clause.elements.map(originalName) : ["*"];
      add(node.moduleSpecifier.text, names, node.isTypeOnly, true);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [specifier] = node.arguments;
      if (specifier && ts.isStringLiteral(specifier)) add(specifier.text, ["*"], false);
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      if (ts.isStringLiteral(node.argument.literal)) add(node.argument.literal.text, ["*"], true);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true));
  return found;
}

function namesOf(clause: ts.ImportClause | undefined): { readonly names: readonly string[]; readonly isType: boolean } {
  if (clause === undefined) return { names: [], isType: false };
  const named = clause.namedBindings;
  const elements = named && ts.isNamedImports(named) ? [...named.elements] : [];
  const names = [
    ...(clause.name ? ["default"] : []),
    ...(named && ts.isNamespaceImport(named) ? ["*"] : []),
    ...elements.map(originalName),
  ];
  const onlyTypes = clause.name === undefined && elements.length > 0 && elements.every((element) => element.isTypeOnly);
  return { names, isType: clause.phaseModifier === ts.SyntaxKind.TypeKeyword || onlyTypes };
}

function originalName(element: ts.ImportSpecifier | ts.ExportSpecifier): string {
  return (element.propertyName ?? element.name).text;
}

function resolved(file: string, specifier: string): string {
  const bare = specifier.replace(/\?.*$/, "");
  return bare.startsWith(".") ? posix.join(posix.dirname(file), bare) : bare;
}
