import ts from "typescript"

/** The innermost node that holds a stretch. */
export function nodeAt(file: ts.SourceFile, from: number, to: number): ts.Node {
  let found: ts.Node = file
  const down = (node: ts.Node): void => {
    if (node.getStart(file) <= from && node.end >= to) {
      found = node
      ts.forEachChild(node, down)
    }
  }
  ts.forEachChild(file, down)
  return found
}

/** The node itself or the nearest one around it that is wanted. */
export function around<T extends ts.Node>(
  node: ts.Node,
  wanted: (node: ts.Node) => node is T,
  steps = 99,
): T | undefined {
  let at: ts.Node | undefined = node
  for (let i = 0; at !== undefined && i <= steps; i++, at = at.parent) if (wanted(at)) return at
  return undefined
}

/** An expression without brackets and assertions around it. */
export function bare(node: ts.Expression): ts.Expression {
  let at = node
  while (ts.isParenthesizedExpression(at) || ts.isNonNullExpression(at) || ts.isAsExpression(at))
    at = at.expression
  return at
}

export type Call = ts.CallExpression | ts.NewExpression

export const isCall = (node: ts.Node): node is Call => ts.isCallExpression(node) || ts.isNewExpression(node)

export type FunctionNode =
  | ts.FunctionDeclaration
  | ts.FunctionExpression
  | ts.ArrowFunction
  | ts.MethodDeclaration
  | ts.GetAccessorDeclaration

export const isFunctionNode = (node: ts.Node): node is FunctionNode =>
  ts.isFunctionDeclaration(node) ||
  ts.isFunctionExpression(node) ||
  ts.isArrowFunction(node) ||
  ts.isMethodDeclaration(node) ||
  ts.isGetAccessorDeclaration(node)

/** What a function is called, or the name that it is given. */
export function nameOfFunction(node: FunctionNode): string | null {
  if (node.name && ts.isIdentifier(node.name)) return node.name.text
  const { parent } = node
  if (ts.isVariableDeclaration(parent) && ts.isIdentifier(parent.name)) return parent.name.text
  return ts.isPropertyAssignment(parent) && ts.isIdentifier(parent.name) ? parent.name.text : null
}
