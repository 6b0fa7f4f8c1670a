import { useId, useState } from "preact/hooks"
import type { Parameter } from "../../worksheet/contract.ts"
import { unitText } from "./number.ts"
import { onStep, plainNumber, readTyped, sliderStep, valueWords } from "./parameter.ts"

/** The worksheet's quantities as sliders with typed values; one press puts all back. */
export function Parameters({
  parameters,
  values,
  own,
  onParameter,
  onReset,
}: {
  parameters: readonly Parameter[]
  values: Readonly<Record<string, number>>
  own: Readonly<Record<string, number>>
  onParameter: (name: string, value: number) => void
  onReset: () => void
}) {
  const home = (p: Parameter) => own[p.name] ?? p.value
  const value = (p: Parameter) => values[p.name] ?? home(p)
  const moved = parameters.some(p => value(p) !== home(p))
  const [resets, setResets] = useState(0)
  return (
    <div class="bn-parameters">
      {parameters.map(p => (
        <ParameterRow
          key={`${p.name} ${resets}`}
          parameter={p}
          value={value(p)}
          home={home(p)}
          onValue={next => onParameter(p.name, next)}
        />
      ))}
      <p class="bn-actions">
        <button
          type="button"
          class="bn-key"
          disabled={!moved}
          onClick={() => {
            setResets(resets + 1)
            onReset()
          }}
        >
          as on my sheet
        </button>
      </p>
    </div>
  )
}

/** Steps by key. The slider itself has none, so that a value typed between two steps is shown where it is. */
const steps: Readonly<Record<string, number>> = {
  ArrowRight: 1,
  ArrowUp: 1,
  ArrowLeft: -1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
}

function ParameterRow({
  parameter,
  value,
  home,
  onValue,
}: {
  parameter: Parameter
  value: number
  home: number
  onValue: (value: number) => void
}) {
  const id = useId()
  const [low, high] = parameter.range
  /** what is being typed; null while the field shows the value itself */
  const [typed, setTyped] = useState<string | null>(null)
  const [why, setWhy] = useState("")
  const take = () => {
    if (typed === null) return
    const read = readTyped(typed, parameter)
    setWhy(read.ok ? "" : read.why)
    if (!read.ok) return
    setTyped(null)
    onValue(read.value)
  }
  const slideTo = (wanted: number) => {
    setTyped(null)
    setWhy("")
    onValue(onStep(parameter, wanted))
  }
  const part = (v: number) => (high > low ? (v - low) / (high - low) : 0)
  const unit = parameter.unit === "1" ? "" : unitText(parameter.unit)
  return (
    <div class="bn-parameter">
      <label class="bn-parameter-label" for={`${id}-value`}>
        {parameter.label}
      </label>
      <span class="bn-slider" style={{ "--home": part(home), "--part": part(value) }}>
        <input
          type="range"
          min={low}
          max={high}
          step="any"
          value={value}
          aria-label={parameter.label}
          aria-valuetext={valueWords(parameter, value)}
          onInput={event => slideTo(Number(event.currentTarget.value))}
          onKeyDown={event => {
            const by = steps[event.key]
            if (by === undefined || event.ctrlKey || event.metaKey || event.altKey) return
            event.preventDefault()
            slideTo(value + by * sliderStep(parameter))
          }}
        />
      </span>
      <span class="bn-typed">
        <input
          id={`${id}-value`}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          size={7}
          value={typed ?? plainNumber(value)}
          aria-invalid={why !== ""}
          aria-describedby={why ? `${id}-why` : undefined}
          onInput={event => setTyped(event.currentTarget.value)}
          onChange={take}
          onKeyDown={event => event.key === "Enter" && take()}
        />
        <span class="bn-unit">{unit}</span>
      </span>
      {why && (
        <p class="bn-why" id={`${id}-why`} role="alert">
          {why} {parameter.label} stays at {valueWords(parameter, value)}.
        </p>
      )}
    </div>
  )
}
