/** The one style sheet of reports, on top of the tokens (tokens.css). Reads well without them too. */
export const reportStyle = `
*, *::before, *::after { box-sizing: border-box }
html { font-size: var(--size-root, 106.25%); background: var(--paper, #fff); color: var(--ink, #1e2328); -webkit-text-size-adjust: none; text-size-adjust: none }
body { margin: 0; font-family: var(--face-text, serif); line-height: var(--leading, 1.5); font-variant-numeric: lining-nums; overflow-wrap: anywhere }
h1, h2, h3, p, ul, ol, dl, dd, figure, pre, table { margin: 0; padding: 0 }
header.top, main, footer.end { max-width: 62rem; margin-inline: auto; padding-inline: clamp(1rem, 4vw, 2.5rem) }
main.single { max-width: 58rem; padding-block: 1.5rem 3rem }
a { color: inherit; text-decoration-color: var(--accent, #a63d1f); text-decoration-thickness: 1px; text-underline-offset: .18em }
a:hover { color: var(--accent, #a63d1f) }
:focus-visible { outline: 2px solid var(--accent, #a63d1f); outline-offset: 2px }
.skip { position: absolute; inset-inline-start: .5rem; inset-block-start: 0; padding: .25rem .75rem; background: var(--ink, #1e2328); color: var(--paper, #fff); transform: translateY(-120%) }
.skip:focus { transform: none }
.unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap }
header.top { padding-block: 1.75rem 0 }
.kicker { font-size: .9rem; font-variant-caps: all-small-caps; letter-spacing: .06em; color: var(--ink-grey, #5e666c) }
h1 { font-size: var(--size-title, 1.728rem); font-weight: 600; line-height: 1.2; text-wrap: balance }
h2 { font-size: var(--size-section, 1.2rem); font-weight: 640; line-height: 1.25; margin-block: 2.4rem .6rem; padding-block-start: .5rem; border-block-start: 1.5px solid var(--ink, #1e2328) }
h3 { font-size: 1rem; font-weight: 640; line-height: 1.35 }
.who-line, .who, .says, .aside, .key, .todo, figcaption, caption, .whom, .back, footer { color: var(--ink-grey, #5e666c) }
.who-line, .who, .aside, .key, .whom, .back, nav, footer, .points, .word, .slip, table, figcaption { font-family: var(--face-plate, sans-serif) }
.who-line { margin-block-start: .2rem; font-size: .9rem }
.who { font-size: .833rem; font-weight: 400 }
.standing { font-size: var(--size-lead, 1.2rem); margin-block-start: .5rem }
nav ul { list-style: none; display: flex; flex-wrap: wrap; gap: .1rem 1.1rem; margin-block-start: .7rem; font-size: .9rem }
nav a, .whom a, .register th a, .back a { display: inline-block; min-height: 1.5rem }
.lead { font-size: 1.06rem; max-width: 44rem }
.findings { list-style: none; margin-block-start: .4rem; display: grid; grid-template-columns: minmax(3rem, max-content) minmax(0, 1fr); column-gap: .9rem }
.findings li { display: grid; grid-column: 1 / -1; grid-template-columns: subgrid; padding-block: .65rem; border-block-start: 1px solid var(--hair, #d8d2c4); break-inside: avoid }
.findings .many { font-size: 1.728rem; line-height: 1.15; font-weight: 600; text-align: end; white-space: nowrap; color: var(--accent, #a63d1f); font-variant-numeric: lining-nums tabular-nums }
.seen { font-weight: 640 }
.seen code { font-weight: 400; color: var(--ink-grey, #5e666c); margin-inline-start: .4em }
.about { color: var(--ink-grey, #5e666c); font-size: .9rem; line-height: 1.4; max-width: 40rem }
.opening { display: grid; gap: .5rem 2.5rem }
@media (min-width: 60rem) { .opening { grid-template-columns: minmax(0, 1fr) 20rem } }
.seen, .say, .why, .texts, .lead { max-width: 40rem }
.say { font-style: italic }
.whom { font-size: .833rem; margin-block-start: .15rem }
.aside { font-size: .9rem; margin-block-start: .5rem }
.scroll { overflow-x: auto; position: relative }
.scroll:focus-visible { outline-offset: -2px }
table { border-collapse: collapse; width: 100%; font-size: .9rem; line-height: 1.4 }
caption { text-align: start; padding-block: 0 .4rem; font-size: .9rem }
th, td { text-align: start; vertical-align: top; padding: .35rem .75rem .35rem 0; border-block-end: 1px solid var(--hair, #d8d2c4); font-weight: 400 }
thead th { color: var(--ink-grey, #5e666c); vertical-align: bottom; border-block-end: 1.5px solid var(--ink, #1e2328) }
thead { break-inside: avoid }
tr { break-inside: avoid }
th b { font-weight: 640; display: block }
th .says { display: block; max-width: 34rem }
.n, thead th { overflow-wrap: normal }
.n { text-align: end; font-variant-numeric: lining-nums tabular-nums; white-space: nowrap; width: 1% }
th.n .mark { display: block; margin-inline-start: auto }
td.many { font-weight: 640 }
.answers { max-width: 42rem }
.answers th { width: 60% }
.answers .right th { font-weight: 640 }
.question { margin-block: .4rem 1.6rem; break-inside: avoid-page }
.question h3 { max-width: 40rem; margin-block-end: .3rem; break-after: avoid }
.why { margin-block-start: .4rem; font-size: .94rem }
.texts { list-style: none; margin-block-start: .5rem }
.texts li { padding-block: .5rem; border-block-start: 1px solid var(--hair, #d8d2c4) }
.prose { white-space: pre-wrap }
.register td, .register th { padding-block: .18rem }
.register thead th { padding-block: .3rem; font-size: .833rem; white-space: nowrap; overflow-wrap: normal }
.register tbody th { min-width: 9rem; max-width: 18rem }
.register td:last-child { min-width: 8rem }
.register .v { position: relative; padding-inline-end: 0 }
.v::before { content: ""; display: block; width: 26px; margin-block-start: .6em; border-block-start: 4px solid transparent }
.v.met::before { border-color: var(--verdict-met, #2c6140) }
.v.not-met::before { border-block-start: 3px dashed var(--verdict-not-met, #a63d1f) }
.v.could-not-run::before { border-block-start: 3px dotted var(--verdict-none, #5e666c) }
.register tfoot td, .register tfoot th { border-block-start: 1.5px solid var(--ink, #1e2328); color: var(--ink-grey, #5e666c) }
.register tfoot td.n { text-align: start }
.register tbody th, .register tfoot th, .register thead th:first-child { position: sticky; inset-inline-start: 0; background: var(--paper, #fff); z-index: 1 }
.not-marked, .not-marked th, .not-marked td { overflow-wrap: break-word }
.not-marked tbody th { padding-block-start: .8rem }
.key { display: flex; flex-wrap: wrap; gap: .2rem 1.4rem; font-size: .833rem; margin-block-end: .5rem }
code, pre { font-family: var(--face-code, monospace); font-size: .86rem; font-variant-ligatures: none }
td code, th code { font-size: .8rem }
.student { padding-block: 1.1rem 1.4rem; border-block-start: 1px solid var(--ink-faint, #8f897a); content-visibility: auto; contain-intrinsic-size: auto 30rem }
.student:first-of-type { border-block-start: 0; padding-block-start: .3rem }
.student h3 { break-after: avoid; display: flex; flex-wrap: wrap; gap: 0 .8rem; align-items: baseline }
.student h3 .points { margin-inline-start: auto; font-weight: 400 }
.beside { display: grid; gap: 1rem 2rem; margin-block-start: .6rem }
@media (min-width: 52rem) { .beside { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) } .wrote { position: sticky; top: .75rem; align-self: start; max-height: calc(100vh - 1.5rem); overflow-y: auto } }
.wrote:empty { display: none }
.wrote:empty + .feedback { grid-column: 1 / -1 }
.listing { margin-block-end: .9rem; break-inside: avoid }
.listing figcaption { font-family: var(--face-text, serif); font-style: italic; font-size: .86rem; line-height: 1.35 }
.listing pre { margin-block-start: .25rem; padding: .4rem .6rem; border-block: 1px solid var(--blank-rule, #8c7f63); background: var(--blank-wash, #faf3df); color: var(--code-ink, #1e2328); white-space: pre-wrap; overflow-wrap: anywhere; line-height: 1.45; tab-size: 2 }
.listing pre.long { max-height: 26rem; overflow-y: auto }
.empty { color: var(--ink-grey, #5e666c); font-style: italic; font-size: .9rem }
.checks, .problems { list-style: none }
.checks li { padding-block-end: .8rem; break-inside: avoid }
.check-head { display: grid; grid-template-columns: 28px minmax(0, 1fr); gap: 0 .6rem; align-items: baseline; font-size: .94rem; line-height: 1.4 }
.check-head .says { color: var(--ink, #1e2328); font-weight: 640 }
.check-head .word { grid-column: 2; display: inline }
.check-head .points { grid-column: 2; margin-block-start: -1.4em; text-align: end }
.points { font-size: .833rem; font-variant-numeric: lining-nums tabular-nums; color: var(--ink-grey, #5e666c) }
.word { font-style: italic; font-size: .86rem }
.word.met { color: var(--verdict-met, #2c6140) }
.word.not-met { color: var(--verdict-not-met, #a63d1f) }
.word.could-not-run { color: var(--verdict-none, #5e666c) }
.checks .message, .checks .slip, .checks .overlay, .checks .aside { margin-inline-start: calc(28px + .6rem) }
.message { font-size: .94rem; line-height: 1.45 }
.slip { font-size: .86rem; color: var(--ink-grey, #5e666c) }
.slip b { font-family: var(--face-code, monospace); font-weight: 400; color: var(--accent, #a63d1f); margin-inline-end: .3em }
.problems { margin-block-end: .8rem; font-size: .94rem }
.problems li { padding-inline-start: .7rem; border-inline-start: 2.5px solid var(--accent, #a63d1f); margin-block-end: .4rem }
.place { display: block; font-size: .86rem; color: var(--ink-grey, #5e666c); overflow-wrap: anywhere }
.questions { margin-block-start: .4rem; border-block-start: 1px solid var(--hair, #d8d2c4); font-size: .94rem }
.questions dt { margin-block-start: .5rem; color: var(--ink-grey, #5e666c); font-size: .9rem }
.questions dd { display: grid; grid-template-columns: minmax(0, 1fr); gap: 0 2rem }
@media (min-width: 52rem) { .questions dd { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) } }
.given { white-space: pre-wrap }
.verdict { line-height: 1.4 }
.verdict .mark { margin-inline-end: .6rem }
.overlay { margin-block-start: .4rem; padding: .5rem .6rem .35rem; background: var(--plate, #f1f1ed); max-width: 27rem; break-inside: avoid }
.overlay svg, .histogram svg { display: block; width: 100%; height: auto; overflow: visible }
.overlay svg svg { display: inline; width: auto; overflow: hidden }
.overlay figcaption { font-size: .78rem; line-height: 1.5; color: var(--ink-grey, #5e666c) }
.overlay .sample { display: inline; width: 34px; height: 8px }
.tick, .name, .amount { font-family: var(--face-plate, sans-serif); font-size: 11px; fill: var(--ink-grey, #5e666c); font-variant-numeric: tabular-nums }
.name { font-weight: 600; fill: var(--ink, #1e2328) }
.grid { stroke: var(--plate-hair, #cfd0c9); stroke-width: 1 }
.own { fill: none; stroke: var(--q-position, #1e2328); stroke-width: 1.75; stroke-linejoin: round }
.own.of-momentum { stroke: var(--q-momentum, #6b3fa3) }
.own.of-forces { stroke: var(--q-force, #8a5f00) }
.reference { fill: none; stroke: var(--q-reference, #5e666c); stroke-width: 1.5; stroke-dasharray: 9 5 }
circle.own { fill: var(--q-position, #1e2328) }
.parting { stroke: var(--accent, #a63d1f); stroke-width: 1; stroke-dasharray: 1.5 3 }
.histogram { max-width: 24rem }
.histogram figcaption { font-size: .9rem }
.column { fill: var(--ink-faint, #8f897a) }
.column.full { fill: var(--verdict-met, #2c6140) }
.amount { fill: var(--ink, #1e2328); font-weight: 600 }
.floor { stroke: var(--ink, #1e2328); stroke-width: 1.5 }
.mark { flex: none; vertical-align: .15em; overflow: visible }
.mark line, .shares line { stroke: var(--verdict-none, #5e666c); stroke-width: 3 }
.mark .met, .shares .met { stroke: var(--verdict-met, #2c6140); stroke-width: 4 }
.mark .not-met, .shares .not-met { stroke: var(--verdict-not-met, #a63d1f); stroke-dasharray: 7 3.5 }
.mark .could-not-run, .shares .could-not-run { stroke-width: 3.5; stroke-linecap: round; stroke-dasharray: .1 6.5 }
.shares line { stroke-width: 6 }
.bar rect { fill: var(--ink-faint, #8f897a) }
.right .bar rect { fill: var(--verdict-met, #2c6140) }
.back { font-size: .833rem; margin-block-start: .4rem }
footer { margin-block: 2.5rem 1.5rem; font-size: .833rem }
@media (max-width: 40rem) {
  .wide-only { display: none }
  .findings { grid-template-columns: minmax(2rem, max-content) minmax(0, 1fr); column-gap: .7rem }
  .findings .many { font-size: 1.44rem }
  .checks .message, .checks .slip, .checks .overlay, .checks .aside { margin-inline-start: 0 }
  th .says { max-width: none }
  .register tbody th { min-width: 7rem; max-width: 9rem }
  .register td:last-child { min-width: 18rem }
}
@media print {
  :root { color-scheme: light }
  html { font-size: 10pt }
  body { background: none }
  nav, .skip, .back { display: none }
  h2 { break-after: avoid }
  .student { content-visibility: visible; break-before: page; border-block-start: 0 }
  .register tbody th, .register tfoot th, .register thead th:first-child { position: static }
  .scroll { overflow: visible }
  .listing pre.long { max-height: none; overflow: visible }
  .wrote { position: static; max-height: none; overflow: visible }
  .beside { display: block }
  .wrote { margin-block-end: 1rem }
  a { text-decoration: none }
}
`
