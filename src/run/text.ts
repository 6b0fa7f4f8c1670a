/**
 * The hardened realm refuses by text, even inside strings and comments, what could be `import(…)`, a direct
 * `eval(…)` or an HTML-like comment. Spelt with an escape, the word `import` keeps its meaning in a string, and in
 * code is an error of syntax; `eval` keeps its meaning, which is that of an unknown name. The arrows get a blank:
 * `x-->0` means the same, and in a printed text it hardly shows.
 */
export function presentable(source: string): string {
  return source
    .replace(/\bimport(?=\s*(?:\(|\/[/*]))/g, "im\\u0070ort")
    .replace(/\beval(?=\s*\()/g, "ev\\u0061l")
    .replace(/<!--/g, "< !--")
    .replace(/-->/g, "-- >")
}
