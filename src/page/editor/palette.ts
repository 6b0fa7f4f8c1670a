import { syntaxHighlighting } from "@codemirror/language"
import { tags as t, tagHighlighter } from "@lezer/highlight"

/** Few classes, few inks: the tokens say how each looks, in given lines and in blanks. */
export const palette = syntaxHighlighting(
  tagHighlighter([
    { tag: [t.keyword, t.modifier, t.self, t.null, t.bool], class: "tok-word" },
    { tag: [t.number], class: "tok-number" },
    { tag: [t.string, t.special(t.string), t.regexp], class: "tok-string" },
    { tag: [t.typeName, t.typeOperator, t.annotation], class: "tok-type" },
    { tag: [t.comment], class: "tok-comment" },
    { tag: [t.operator, t.arithmeticOperator, t.updateOperator, t.compareOperator], class: "tok-operator" },
  ]),
)
