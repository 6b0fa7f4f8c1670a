import * as v from "valibot"
import type { Problem } from "../cell/problem.ts"
import type { Edition, Shelf } from "../judge/edition.ts"

export type Loaded<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: Problem }

const pair = v.tuple([v.number(), v.number()])

const shelfSchema = v.object({
  format: v.literal("deltasheet-shelf/1"),
  title: v.string(),
  cards: v.array(
    v.object({
      id: v.string(),
      title: v.string(),
      version: v.number(),
      summary: v.string(),
      lesson: v.nullable(v.number()),
      cells: v.number(),
      blanks: v.number(),
      questions: v.number(),
      points: v.number(),
      strobe: v.nullable(
        v.object({
          interval: v.number(),
          bodies: v.array(
            v.object({
              name: v.string(),
              radius: v.number(),
              box: v.optional(pair),
              points: v.array(pair),
            }),
          ),
          planes: v.array(v.object({ point: pair, normal: pair })),
        }),
      ),
    }),
  ),
})

/** The frame of an edition: enough to know that it is one, and whole. Its inside was checked where it was made. */
const editionSchema = v.object({
  format: v.literal("deltasheet-edition/1"),
  sheet: v.looseObject({
    id: v.string(),
    title: v.string(),
    version: v.number(),
    digest: v.string(),
    summary: v.string(),
    parameters: v.array(v.looseObject({ name: v.string(), value: v.number() })),
    blocks: v.array(v.looseObject({ kind: v.string() })),
    cells: v.array(
      v.looseObject({ name: v.string(), segments: v.array(v.looseObject({ kind: v.string() })) }),
    ),
    checks: v.array(v.looseObject({ name: v.string(), points: v.number() })),
    questions: v.array(v.looseObject({ name: v.string() })),
    scenes: v.array(v.unknown()),
    plots: v.array(v.unknown()),
    data: v.array(v.unknown()),
  }),
  starter: v.looseObject({ js: v.string(), program: v.looseObject({ text: v.string() }) }),
  reference: v.unknown(),
  units: v.record(v.string(), v.record(v.string(), v.string())),
})

async function fetchJson(
  address: string,
  what: string,
): Promise<{ ok: true; value: unknown } | { ok: false; missing: boolean; problem: Problem }> {
  try {
    const answer = await fetch(address)
    if (!answer.ok)
      return {
        ok: false,
        missing: answer.status === 404,
        problem: {
          code: "page-data-missing",
          text: `${what} could not be fetched: the server answered ${answer.status} for ${address}.`,
          todo: "Load the page again; if it stays so, tell whoever put these pages there.",
        },
      }
    return { ok: true, value: await answer.json() }
  } catch (cause) {
    const broken = cause instanceof SyntaxError
    return {
      ok: false,
      missing: false,
      problem: broken
        ? {
            code: "page-data-broken",
            text: `${what} came, but ${address} is not whole.`,
            todo: "Load the page again; if it stays so, the folder has to be published anew.",
          }
        : {
            code: "page-data-missing",
            text: `${what} could not be fetched: there is no connection to where this page came from.`,
            todo:
              location.protocol === "file:"
                ? "A page opened as a file cannot read its worksheets: put the folder on any web server, or start one in it."
                : "Check the connection and load the page again; what you typed before is still on this device.",
          },
    }
  }
}

export async function loadShelf(): Promise<Loaded<Shelf>> {
  const answer = await fetchJson("data/shelf.json", "The list of worksheets")
  if (!answer.ok) return answer
  const read = v.safeParse(shelfSchema, answer.value)
  if (read.success) return { ok: true, value: read.output }
  return {
    ok: false,
    problem: {
      code: "page-data-format",
      text: "The list of worksheets was written by another version of this program.",
      todo: "Publish the worksheets again with the version that this page belongs to.",
    },
  }
}

export async function loadEdition(id: string): Promise<Loaded<Edition>> {
  if (!/^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u.test(id)) return { ok: false, problem: unknownWorksheet(id) }
  const answer = await fetchJson(`data/${encodeURIComponent(id)}.json`, "The worksheet")
  if (!answer.ok) return { ok: false, problem: answer.missing ? unknownWorksheet(id) : answer.problem }
  if (v.is(editionSchema, answer.value)) return { ok: true, value: answer.value as unknown as Edition }
  return {
    ok: false,
    problem: {
      code: "page-data-format",
      text: "This worksheet was written by another version of this program.",
      todo: "Publish the worksheet again with the version that this page belongs to.",
    },
  }
}

const unknownWorksheet = (id: string): Problem => ({
  code: "page-no-worksheet",
  text: `There is no worksheet “${id.slice(0, 60)}” here.`,
  todo: "Choose one from the shelf; the address may have been mistyped or the worksheet taken away.",
})
