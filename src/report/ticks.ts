/** Round values between two ends, about `wanted` of them: steps of 1, 2 or 5 times a power of ten. */
export function ticksOf(low: number, high: number, wanted: number): number[] {
  const span = high - low
  if (!(span > 0) || !Number.isFinite(span)) return [low]
  const rough = span / wanted
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 5, 10].map(factor => factor * power).find(size => size >= rough * 0.999)!
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step)
}

/** A short number for an axis: four digits, true minus, powers of ten for what is very large or small. */
export function axisNumber(value: number): string {
  if (value === 0 || Math.abs(value) < 1e-12) return "0"
  const size = Math.abs(value)
  const text = size >= 1e5 || size < 1e-3 ? powers(value) : String(Number(value.toPrecision(4)))
  return text.replace("-", "−")
}

const superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹"

function powers(value: number): string {
  const [digits, power] = value.toExponential(2).split("e")
  const raised = Array.from(String(Math.abs(Number(power))), digit => superscripts[Number(digit)]).join("")
  return `${Number(digits)} · 10${Number(power) < 0 ? "⁻" : ""}${raised}`
}
