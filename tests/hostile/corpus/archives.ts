import { strToU8, type Zippable, zipSync } from "fflate"

/** One archive that means harm, with an honest answer file in it where that is possible. */
export interface HostileArchive {
  readonly name: string
  /** @param honest an answer file that should be marked all the same */
  readonly bytes: (honest: Uint8Array) => Uint8Array
  /** whether the honest file in it is still marked */
  readonly honestMarked: boolean
  /** pattern of what is said of the rest; null where there is nothing to say */
  readonly said: RegExp | null
}

const megabytes = (n: number): Uint8Array => new Uint8Array(n * 1_000_000).fill(32)
const junk = strToU8("not an answer")

/** Finds the n-th central directory entry (APPNOTE 4.3.12). */
function central(zip: Uint8Array, n: number): number {
  let seen = 0
  for (let at = 0; at + 4 <= zip.length; at++)
    if (zip[at] === 0x50 && zip[at + 1] === 0x4b && zip[at + 2] === 1 && zip[at + 3] === 2 && seen++ === n)
      return at
  throw new Error("no such entry")
}

function changed(
  zip: Uint8Array,
  change: (view: DataView, centralAt: (n: number) => number) => void,
): Uint8Array {
  const copy = zip.slice()
  change(new DataView(copy.buffer), n => central(copy, n))
  return copy
}

const withHonest = (honest: Uint8Array, more: Zippable): Uint8Array =>
  zipSync({ "a-honest.json": honest, ...more })

export const archives: readonly HostileArchive[] = [
  {
    name: "a path that climbs out",
    bytes: honest => withHonest(honest, { "../../../etc/evil.json": junk }),
    honestMarked: true,
    said: /not JSON/,
  },
  {
    name: "absolute paths of two systems",
    bytes: honest => withHonest(honest, { "/etc/passwd.json": junk, "C:\\Windows\\evil.json": junk }),
    honestMarked: true,
    said: /not JSON/,
  },
  {
    name: "a link to a file outside",
    bytes: honest =>
      changed(withHonest(honest, { "link.json": strToU8("/etc/passwd") }), (view, at) => {
        view.setUint8(at(1) + 5, 3)
        view.setUint32(at(1) + 38, 0o120777 * 0x10000, true)
      }),
    honestMarked: true,
    said: /link to another file/,
  },
  {
    name: "one entry that grows a thousandfold",
    bytes: honest => withHonest(honest, { "bomb.json": [megabytes(20), { level: 9 }] }),
    honestMarked: true,
    said: /20\.0 MB/,
  },
  {
    name: "one entry that grows a thousandfold and says that it is small",
    bytes: honest =>
      changed(withHonest(honest, { "bomb.json": [megabytes(20), { level: 9 }] }), (view, at) =>
        view.setUint32(at(1) + 24, 1000, true),
      ),
    honestMarked: true,
    said: /at most 2 MB|damaged/,
  },
  {
    name: "many entries that grow a thousandfold together",
    bytes: honest =>
      withHonest(
        honest,
        Object.fromEntries(
          Array.from({ length: 60 }, (_, i): [string, Zippable[string]] => [
            `bomb${i}.json`,
            [megabytes(1.9), { level: 9 }],
          ]),
        ),
      ),
    honestMarked: false,
    said: /times its size/,
  },
  {
    name: "archives inside archives",
    bytes: honest =>
      withHonest(honest, {
        "inner.zip": zipSync({ "inner.zip": zipSync({ "bomb.json": [megabytes(20), { level: 9 }] }) }),
      }),
    honestMarked: true,
    said: /archive inside an archive/,
  },
  {
    name: "entries that lie over one another",
    bytes: honest =>
      changed(withHonest(honest, { "b.json": junk, "c.json": junk }), (view, at) =>
        view.setUint32(at(2) + 42, view.getUint32(at(1) + 42, true), true),
      ),
    honestMarked: false,
    said: /lie over one another/,
  },
  {
    name: "an entry that is not where the directory says",
    bytes: honest =>
      changed(withHonest(honest, { "b.json": junk }), (view, at) =>
        view.setUint32(at(1) + 42, 0xfffffff0, true),
      ),
    honestMarked: true,
    said: /damaged/,
  },
  {
    name: "an entry with other content than its checksum says",
    bytes: honest =>
      changed(withHonest(honest, { "b.json": [junk, { level: 0 }] }), (view, at) =>
        view.setUint8(view.getUint32(at(1) + 42, true) + 30 + "b.json".length, 0x4e),
      ),
    honestMarked: true,
    said: /damaged/,
  },
  {
    name: "an encrypted entry",
    bytes: honest =>
      changed(withHonest(honest, { "b.json": junk }), (view, at) =>
        view.setUint16(at(1) + 8, view.getUint16(at(1) + 8, true) | 1, true),
      ),
    honestMarked: true,
    said: /with a password/,
  },
  {
    name: "an entry packed in a way that nobody knows",
    bytes: honest =>
      changed(withHonest(honest, { "b.json": junk }), (view, at) => view.setUint16(at(1) + 10, 99, true)),
    honestMarked: true,
    said: /not read here/,
  },
  {
    name: "the same name twice",
    bytes: honest =>
      changed(withHonest(honest, { "b-honest.json": junk }), (view, at) => view.setUint8(at(1) + 46, 0x61)),
    honestMarked: true,
    said: /not JSON/,
  },
  {
    name: "a name with turned writing, control signs and pictures",
    bytes: honest => withHonest(honest, { "\u202egnp\u0007\u0000🗝️.json": junk }),
    honestMarked: true,
    said: /not JSON/,
  },
  {
    name: "a name of sixty thousand letters",
    bytes: honest => withHonest(honest, { [`${"n".repeat(60_000)}.json`]: junk }),
    honestMarked: true,
    said: /not JSON/,
  },
  {
    name: "a directory that promises more entries than there are",
    bytes: honest =>
      changed(withHonest(honest, {}), view => view.setUint16(view.byteLength - 12, 60_000, true)),
    honestMarked: false,
    said: /breaks off/,
  },
  {
    name: "an archive cut in the middle",
    bytes: honest => withHonest(honest, { "b.json": junk }).subarray(0, 200),
    honestMarked: false,
    said: /cut short/,
  },
]
