/**
 * Two masses joined by a damped spring, over a rough floor that pushes back like a spring: 1e6 steps. Once as a student
 * writes it, once by hand with three plain numbers a vector and the same order of operations. Invented data.
 */
const steps = 1_000_000

const start = `
const m1 = 2, m2 = 3, k = 400, c = 2, rest = 0.5, mu = 0.3, kFloor = 5000, cFloor = 20, radius = 0.1
const dt = 0.0005
`

const cellLoop = (record: string): string => `${start}
const g: Vec3<'N/kg'> = vec3(0, -9.81, 0)
let r1: Vec3<'m'> = vec3(0, 0.6, 0)
let r2: Vec3<'m'> = vec3(0.3, 1.1, 0.1)
let p1: Vec3<'kg m/s'> = vec3(1, 0, 0.5)
let p2: Vec3<'kg m/s'> = vec3(-1, 2, 0)
let t = 0
let step = 0
while (step < ${steps}) {
  const d = r2 - r1
  const length = magnitude(d)
  const along = d / length
  const closing = dot(p2 / m2 - p1 / m1, along)
  const Fspring = (k * (length - rest) + c * closing) * along
  let F1 = m1 * g + Fspring
  let F2 = m2 * g - Fspring
  if (r1.y < radius) {
    const N = kFloor * (radius - r1.y) - cFloor * p1.y / m1
    if (N > 0) {
      F1 += vec3(0, N, 0)
      const slip = vec3(p1.x, 0, p1.z) / m1
      const speed = magnitude(slip)
      if (speed > 0) F1 += -mu * N * slip / speed
    }
  }
  if (r2.y < radius) {
    const N = kFloor * (radius - r2.y) - cFloor * p2.y / m2
    if (N > 0) {
      F2 += vec3(0, N, 0)
      const slip = vec3(p2.x, 0, p2.z) / m2
      const speed = magnitude(slip)
      if (speed > 0) F2 += -mu * N * slip / speed
    }
  }
  p1 = p1 + F1 * dt
  p2 = p2 + F2 * dt
  r1 = r1 + p1 / m1 * dt
  r2 = r2 + p2 / m2 * dt
  step += 1
  t = step * dt
  ${record}
}
console.log(r1.x, r1.y, r1.z, r2.x, r2.y, r2.z, p1.x, p2.y)
`

export const plainCell = cellLoop("")
export const recordedCell = cellLoop(
  "record(t, { lower: { position: r1, momentum: p1 }, upper: { position: r2, momentum: p2 } })",
)

export const byHand = `"use strict"
${start}
const gx = 0, gy = -9.81, gz = 0
let r1x = 0, r1y = 0.6, r1z = 0, r2x = 0.3, r2y = 1.1, r2z = 0.1
let p1x = 1, p1y = 0, p1z = 0.5, p2x = -1, p2y = 2, p2z = 0
let t = 0, step = 0
while (step < ${steps}) {
  const dx = r2x - r1x, dy = r2y - r1y, dz = r2z - r1z
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz)
  const ax = dx / length, ay = dy / length, az = dz / length
  const closing = (p2x / m2 - p1x / m1) * ax + (p2y / m2 - p1y / m1) * ay + (p2z / m2 - p1z / m1) * az
  const S = k * (length - rest) + c * closing
  const sx = S * ax, sy = S * ay, sz = S * az
  let f1x = m1 * gx + sx, f1y = m1 * gy + sy, f1z = m1 * gz + sz
  let f2x = m2 * gx - sx, f2y = m2 * gy - sy, f2z = m2 * gz - sz
  if (r1y < radius) {
    const N = kFloor * (radius - r1y) - cFloor * p1y / m1
    if (N > 0) {
      f1y = f1y + N
      const vx = p1x / m1, vy = 0 / m1, vz = p1z / m1
      const speed = Math.sqrt(vx * vx + vy * vy + vz * vz)
      if (speed > 0) { const q = -mu * N; f1x = f1x + q * vx / speed; f1y = f1y + q * vy / speed; f1z = f1z + q * vz / speed }
    }
  }
  if (r2y < radius) {
    const N = kFloor * (radius - r2y) - cFloor * p2y / m2
    if (N > 0) {
      f2y = f2y + N
      const vx = p2x / m2, vy = 0 / m2, vz = p2z / m2
      const speed = Math.sqrt(vx * vx + vy * vy + vz * vz)
      if (speed > 0) { const q = -mu * N; f2x = f2x + q * vx / speed; f2y = f2y + q * vy / speed; f2z = f2z + q * vz / speed }
    }
  }
  p1x = p1x + f1x * dt; p1y = p1y + f1y * dt; p1z = p1z + f1z * dt
  p2x = p2x + f2x * dt; p2y = p2y + f2y * dt; p2z = p2z + f2z * dt
  r1x = r1x + p1x / m1 * dt; r1y = r1y + p1y / m1 * dt; r1z = r1z + p1z / m1 * dt
  r2x = r2x + p2x / m2 * dt; r2y = r2y + p2y / m2 * dt; r2z = r2z + p2z / m2 * dt
  step += 1
  t = step * dt
}
console.log(r1x, r1y, r1z, r2x, r2y, r2z, p1x, p2y)
`
