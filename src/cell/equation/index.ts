export { type Equation, equationsOf } from "./equations.ts"
