/** A cell of about so many lines, in the manner of a student's; `round` makes it a new text. Invented. */
export function longCell(lines: number, round: number): string {
  const head = [
    `const k: Scalar<'N/m'> = ${100 + round}`,
    "const dt: Scalar<'s'> = 0.001",
    "const g: Vec3<'N/kg'> = vec3(0, -9.81, 0)",
    "let r: Vec3<'m'> = vec3(0, 1, 0)",
    "let p: Vec3<'kg m/s'> = vec3(0.5, 0, 0)",
    "let t: Scalar<'s'> = 0",
    "while (t < 2) {",
  ]
  const body = [
    "  const stretch = magnitude(r) - 0.5 // how far the spring is out",
    "  const Fspring = -k * stretch * unit(r)",
    "  const Fdrag = -0.2 * (p / mass)",
    "  const Fnet = mass * g + Fspring + Fdrag",
    "  p = p + Fnet * dt",
    "  r = r + (p / mass) * dt",
  ]
  const tail = ["  t = t + dt", "  record(t, { bob: { position: r, momentum: p } })", "}"]
  const out = [...head]
  for (let i = 0; out.length + tail.length + body.length < lines; i++) {
    out.push("  {", ...body, "  }", `  if (r.y < ${i}) { console.log(\`low at \${t}\`, r.y + 1) }`)
  }
  return [...out, ...tail].join("\n")
}
