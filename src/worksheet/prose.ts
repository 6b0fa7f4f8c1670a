import { tex } from "@mdit/plugin-tex"
import katex from "katex"
import MarkdownIt from "markdown-it"

/** One equation that KaTeX could not set, with the line of the text it was found in (from 1, of the rendered piece). */
export interface ProseFault {
  readonly tex: string
  readonly reason: string
}

interface ProseEnvironment {
  faults: ProseFault[]
  images: string[]
}

/**
 * CommonMark with equations between dollar signs, set by KaTeX as HTML with MathML beside it (for screen readers).
 * Raw HTML stays text. Links open nothing but http(s), mail and relative addresses (markdown-it's own rule).
 */
const markdown = new MarkdownIt({ html: false, linkify: false, typographer: true }).enable(["table"])
markdown.use(tex, {
  render(content, displayMode, environment: ProseEnvironment) {
    try {
      const html = katex.renderToString(content, {
        displayMode,
        throwOnError: true,
        strict: "ignore",
        trust: false,
      })
      return displayMode ? `<div class="equation">${html}</div>` : html
    } catch (cause) {
      environment.faults.push({
        tex: content,
        reason: cause instanceof Error ? cause.message : String(cause),
      })
      return `<code class="unset">${markdown.utils.escapeHtml(content)}</code>`
    }
  },
})

const plainImage = markdown.renderer.rules.image!
markdown.renderer.rules.image = (tokens, index, options, environment: ProseEnvironment, self) => {
  const source = tokens[index]!.attrGet("src")
  if (source) environment.images.push(source)
  return plainImage(tokens, index, options, environment, self)
}

/** The parser, for finding fences with their lines: the same dialect that sets the prose. */
export function tokens(text: string) {
  return markdown.parse(text, { faults: [], images: [] })
}

export interface SetProse {
  readonly html: string
  readonly faults: readonly ProseFault[]
  /** addresses of the images it shows */
  readonly images: readonly string[]
}

/** Sets a stretch of Markdown. */
export function setProse(text: string): SetProse {
  const environment: ProseEnvironment = { faults: [], images: [] }
  const html = markdown.render(text, environment)
  return { html, ...environment }
}

/** Sets one line, without a paragraph around it: a question, a choice, a caption. */
export function setLine(text: string): SetProse {
  const environment: ProseEnvironment = { faults: [], images: [] }
  const html = markdown.renderInline(text, environment)
  return { html, ...environment }
}
