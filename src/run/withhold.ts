/**
 * The names that a place of programs keeps on its global object: the language's own, and those of the hardened
 * realm. Everything else (network, files, processes, threads, timers, storage, clocks, messages) is taken away.
 */
const kept = new Set<string | symbol>([
  ..."globalThis Infinity NaN undefined eval isFinite isNaN parseFloat parseInt".split(" "),
  ..."decodeURI decodeURIComponent encodeURI encodeURIComponent escape unescape".split(" "),
  ..."Array ArrayBuffer BigInt Boolean DataView Date Function JSON Map Math Number Object".split(" "),
  ..."Promise Proxy Reflect RegExp Set String Symbol WeakMap WeakSet Iterator".split(" "),
  ..."Error AggregateError EvalError RangeError ReferenceError SyntaxError TypeError URIError".split(" "),
  ..."Int8Array Int16Array Int32Array Uint8Array Uint8ClampedArray Uint16Array Uint32Array".split(" "),
  ..."BigInt64Array BigUint64Array Float16Array Float32Array Float64Array".split(" "),
  ..."Compartment harden lockdown assert HandledPromise".split(" "),
])

/**
 * Second line behind the realm: even a program that got hold of the place's own global object would find nothing
 * there that reaches out. Takes names off the object and off everything that it inherits from.
 *
 * @returns the names that could not be taken away
 */
export function withholdHostPowers(): string[] {
  const left: string[] = []
  for (
    let object: object | null = globalThis;
    object !== null && object !== Object.prototype;
    object = Object.getPrototypeOf(object)
  )
    for (const name of Reflect.ownKeys(object))
      if (!kept.has(name) && name !== "constructor" && !Reflect.deleteProperty(object, name))
        left.push(String(name))
  return left
}
