export type {
  Annotation,
  Declarator,
  Entry,
  Expression,
  FunctionNode,
  Statement,
  Target,
  Tree,
} from "./nodes.ts"
export { readTree } from "./read.ts"
