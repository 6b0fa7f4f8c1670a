import { type Corpus, fault, right, slip } from "./corpus.ts"

const onA = (text: string) => ({ on_a: text })
const onB = (text: string) => ({ on_b: text })
const both = (a: string, b: string) => ({ on_a: a, on_b: b })
const centre = (text: string) => ({ centre: text })
const spring = ["spring-sign-turned", "sign-turned"]

export const twoFloats: Corpus = {
  worksheet: "two-floats",
  right: [
    right("as the sheet has it", onA("FonA = stiffness * stretch * unit(d)")),
    right("direction by hand", onA("const L = magnitude(d)\nFonA = (stiffness * stretch / L) * d")),
    right(
      "by components",
      onA(
        "const L = Math.sqrt(d.x ** 2 + d.y ** 2)\nconst F = stiffness * (L - restLength)\nFonA = vec3((F * d.x) / L, (F * d.y) / L, 0)",
      ),
    ),
    right("methods", onA("FonA = d.unit().times(stretch * stiffness)")),
    right("as an arrow of the stretch", onA("const s = d - restLength * unit(d)\nFonA = stiffness * s")),
    right(
      "by the angle",
      onA(
        "const a = Math.atan2(rB.y - rA.y, rB.x - rA.x)\nFonA = stiffness * stretch * vec3(Math.cos(a), Math.sin(a), 0)",
      ),
    ),
    right("from B to A", onA("const back = unit(rA - rB)\nFonA = -stiffness * stretch * back")),
    right(
      "from the library",
      onA("FonA = springForce(rA, rB, { stiffness: stiffness, restLength: restLength })"),
    ),
    right("opposite", onB("FonB = -1 * FonA")),
    right("written out again", onB("FonB = -stiffness * stretch * unit(d)")),
    right("taken from nothing", onB("FonB = FonB - FonA")),
    right("direction turned round", onB("FonB = stiffness * stretch * unit(rA - rB)")),
    right("each component", onB("FonB = vec3(-FonA.x, -FonA.y, -FonA.z)")),
    right(
      "one helper for both",
      both(
        "const pull = (from: Vec3<'m'>, to: Vec3<'m'>) => stiffness * (magnitude(to - from) - restLength) * unit(to - from)\nFonA = pull(rA, rB)",
        "FonB = pull(rB, rA)",
      ),
    ),
    right("as the sheet has it, the centre", centre("rC = (mA * rA + mB * rB) / (mA + mB)")),
    right("a share of the way", centre("rC = rA + (mB / (mA + mB)) * d")),
    right("a share of the new way", centre("const share = mB / (mA + mB)\nrC = rA + share * (rB - rA)")),
    right(
      "weights first",
      centre("const M = mA + mB\nconst a = mA / M\nconst b = mB / M\nrC = a * rA + b * rB"),
    ),
    right(
      "each component of the centre",
      centre("const M = mA + mB\nrC = vec3((mA * rA.x + mB * rB.x) / M, (mA * rA.y + mB * rB.y) / M, 0)"),
    ),
    right("moments added up", centre("rC = rC + mA * rA\nrC = rC + mB * rB\nrC = rC / (mA + mB)")),
    // written last, and measured once before anything was tuned on them

    right(
      "shorter and longer",
      onA(
        "if (stretch > 0) FonA = stiffness * stretch * unit(d)\nelse FonA = -stiffness * -stretch * unit(d)",
      ),
    ),
    right(
      "work per way",
      onA(
        "const L = magnitude(rB - rA)\nconst e = (rB - rA) / L\nFonA = e.times(stiffness * L - stiffness * restLength)",
      ),
    ),
    right(
      "both at once",
      both("const F = stiffness * stretch * unit(d)\nFonA = F\nFonB = -F", "FonB = FonB + vec3(0, 0, 0)"),
    ),
    right("sum of both is nothing", onB("const total = vec3(0, 0, 0)\nFonB = total - FonA")),
    right("centre by method", centre("rC = rA.times(mA).add(rB.times(mB)).over(mA + mB)")),
    right("centre from B", centre("const M = mA + mB\nrC = rB - (mA / M) * (rB - rA)")),
    right(
      "from the library, centre",
      centre(
        "rC = centreOfMass([{ mass: mA, position: rA, momentum: pA }, { mass: mB, position: rB, momentum: pB }])",
      ),
    ),
  ],
  wrong: [
    slip(spring, "pushes when stretched", onA("FonA = -stiffness * stretch * unit(d)")),
    slip(spring, "from B to A", onA("FonA = stiffness * stretch * unit(rA - rB)")),
    slip(
      spring,
      "stretch turned round",
      onA("const s = restLength - magnitude(d)\nFonA = stiffness * s * unit(d)"),
    ),
    slip("spring-without-rest-length", "whole length", onA("FonA = stiffness * d")),
    slip(
      "spring-without-rest-length",
      "length and direction",
      onA("FonA = stiffness * magnitude(d) * unit(d)"),
    ),
    slip("direction-not-unit", "arrow for direction", onA("FonA = stiffness * stretch * d")),
    slip("direction-not-unit", "difference for direction", onA("FonA = (rB - rA) * stretch * stiffness")),
    slip("factor-lost", "no stretch", onA("FonA = unit(d) * stiffness")),
    slip("factor-lost", "no stiffness", onA("FonA = stretch * unit(d)")),
    slip("third-law-forgotten", "the same force", onB("FonB = FonA")),
    slip("third-law-forgotten", "the same words", onB("FonB = stiffness * stretch * unit(d)")),
    slip("second-body-forgotten", "nothing on B", onB("FonB = vec3(0, 0, 0)")),
    slip("second-body-forgotten", "left as it is", onB("FonB = FonB")),
    slip("magnitude-for-vector", "stretch along x", onA("FonA = vec3(stiffness * stretch, 0, 0)")),
    slip("mass-missing", "halfway", centre("rC = (rA + rB) / 2")),
    slip("mass-missing", "halfway along d", centre("rC = rA + (rB - rA) / 2")),
    slip("mass-missing", "only one mass", centre("rC = (mA * rA + rB) / (mA + mB)")),
    slip("term-missing", "only A in the sum", centre("rC = mA * rA / (mA + mB)")),
    slip("term-missing", "only one mass below", centre("rC = (rA * mA + rB * mB) / mA")),
    slip("sign-turned", "difference of the moments", centre("rC = (mB * rB - mA * rA) / (mA + mB)")),
    fault("never pushes", onA("if (stretch > 0) FonA = stiffness * stretch * unit(d)")),
    fault("size of the stretch", onA("FonA = stiffness * Math.abs(stretch) * unit(d)")),
    fault("half", onA("FonA = 0.5 * stiffness * stretch * unit(d)")),
    fault("energy for force", onA("FonA = 0.5 * stiffness * stretch ** 2 * unit(d)")),
    fault("squared stretch", onA("FonA = stiffness * stretch * Math.abs(stretch) * unit(d)")),
    fault("only along x", onA("FonA = vec3(stiffness * stretch * unit(d).x, 0, 0)")),
    fault("times the mass", onA("FonA = mA * stiffness * stretch * unit(d)")),
    fault("per mass", onA("FonA = (stiffness * stretch * unit(d)) / mA")),
    fault("rest length of two", onA("FonA = stiffness * (magnitude(d) - 2 * restLength) * unit(d)")),
    fault("towards the place of B", onA("FonA = stiffness * stretch * unit(rB)")),
    fault("component by component", onA("FonA = stiffness * vec3(d.x - restLength, d.y, 0)")),
    fault("fits one float", onA("FonA = 15 * mA * stretch * unit(d)")),
    fault("loses a tenth each way", onA("FonA = stiffness * stretch * unit(d) - 2 * pA / mA")),
    fault("half for B", onB("FonB = -FonA / 2")),
    fault("shared by mass", onB("FonB = -FonA * mB / mA")),
    fault("shared by mass the other way", onB("FonB = -FonA * (mA / mB)")),
    fault("only the x part", onB("FonB = vec3(-FonA.x, FonA.y, 0)")),
    slip("magnitude-for-vector", "size for force", onB("FonB = magnitude(FonA) * vec3(-1, 0, 0)")),
    fault("masses exchanged", centre("rC = (mB * rA + mA * rB) / (mA + mB)")),
    fault("old place of B", centre("rC = (mA * rA + mB * (rA - d)) / (mA + mB)")),
    fault("mean of the weighted places", centre("rC = (mA * rA + mB * rB) / 2")),
    fault("product below", centre("rC = (mA * rA + mB * rB) / (mA * mB)")),
    fault("a share of the way from B", centre("rC = rB + (mB / (mA + mB)) * (rA - rB)")),
    fault("momentum for place", centre("rC = (pA + pB) / (mA + mB)")),
    fault("moves by itself", centre("rC = vec3(2 / 3, 0, 0) + ((pA + pB) / (mA + mB)) * t")),
    fault("a third", centre("rC = rA + (2 / 3) * (rB - rA)")),
    fault("absolute place of the heavier", centre("rC = mA > mB ? rA : rB")),
    // written last, and measured once before anything was tuned on them

    slip(spring, "minus by Hooke's book", onA("const F = -stiffness * stretch\nFonA = F * unit(d)")),
    slip(
      "spring-without-rest-length",
      "no rest length in components",
      onA("FonA = vec3(stiffness * d.x, stiffness * d.y, 0)"),
    ),
    slip(
      "third-law-forgotten",
      "copied lines",
      onB("const e = (rB - rA) / magnitude(rB - rA)\nFonB = stiffness * stretch * e"),
    ),
    slip("second-body-forgotten", "zero times", onB("FonB = 0 * FonA")),
    slip("mass-missing", "middle of the tether", centre("rC = 0.5 * rA + 0.5 * rB")),
    slip("term-missing", "only B in the sum", centre("const M = mA + mB\nrC = (mB / M) * rB")),
    fault(
      "softer when squeezed",
      onA("const k = stretch > 0 ? stiffness : stiffness / 2\nFonA = k * stretch * unit(d)"),
    ),
    fault("old start of B", onA("FonA = stiffness * stretch * unit(vec3(1, 0, 0) - rA)")),
    // B stands at the rest length from the start: no force at all
    slip(
      "force-missing",
      "stretch against the start",
      onA("FonA = stiffness * (magnitude(rB) - restLength) * unit(d)"),
    ),
    fault("relative stretch", onA("FonA = stiffness * (stretch / long) * unit(d)")),
    fault("with the masses in it", onA("FonA = ((stiffness * mA) / (mA + mB)) * stretch * unit(d)")),
    fault("a twist", onA("FonA = stiffness * stretch * unit(d) + cross(vec3(0, 0, 5), unit(d))")),
    fault("the same size down", onB("FonB = magnitude(FonA) * vec3(0, -1, 0)")),
    fault("nearly opposite", onB("FonB = -1.1 * FonA")),
    fault("weight in the wrong place", centre("rC = (mA * rA + mB * rB) / mA + mB * vec3(1, 0, 0)")),
    fault("inverse masses", centre("rC = (rA / mA + rB / mB) / (1 / mA + 1 / mB)")),
  ],
}
