import type { TransformOptions } from "esbuild-wasm"

/** How the types are taken away: nothing else about the program changes. */
export const stripOptions: TransformOptions = {
  loader: "ts",
  target: "esnext",
  charset: "utf8",
  legalComments: "none",
  treeShaking: false,
  tsconfigRaw: {
    compilerOptions: { useDefineForClassFields: true, verbatimModuleSyntax: true, strict: true },
  },
  logLevel: "silent",
}
