import { useSignal } from "@preact/signals"
import { useCallback, useId, useMemo } from "preact/hooks"
import type { Recording } from "../../run/contract.ts"
import type { Scene as SceneBlock } from "../../worksheet/contract.ts"
import type { SentVariable } from "../lines/looking.ts"
import type { StepStudying } from "../stepping.ts"
import { BooksDrawer } from "./BooksDrawer.tsx"
import { distanceOf } from "./compare.ts"
import type { BenchProps } from "./contract.ts"
import { Drawer } from "./Drawer.tsx"
import { firstDeparture } from "./departures.ts"
import { FreeBody } from "./FreeBody.tsx"
import { useHand } from "./hand.ts"
import { Legend } from "./Legend.tsx"
import { Parameters } from "./Parameters.tsx"
import { type Measured, PlotsDrawer } from "./PlotsDrawer.tsx"
import { Printed } from "./Printed.tsx"
import { usePlayer } from "./player.ts"
import { quantitiesOf } from "./quantities.ts"
import { Scene } from "./Scene.tsx"
import { EmptyBench, ProblemNote, StateLine } from "./State.tsx"
import { StepDrawer } from "./StepDrawer.tsx"
import { sentPlots, sentQuantities } from "./sent.ts"
import { recordingFor } from "./series.ts"
import { shownAtFirst } from "./shown.ts"
import { inSentence, labelOf, type Study, studyOf } from "./study.ts"
import { TimeBar } from "./TimeBar.tsx"
import { ValueTable } from "./ValueTable.tsx"
import { arrowRoom, arrowScales } from "./vectors.ts"
import { describe } from "./words.ts"
import "./bench.css"
import "./scene.css"
import "./time.css"
import "./parameters.css"
import "./plots.css"
import "./tables.css"
import "./room.css"

/** The bench: the recorded motion of the cell in view, played and looked into. */
export function Bench(props: BenchProps) {
  const { sheet, cell, recordings, problem } = props
  const cells = useMemo(() => sheet.cells.map(c => c.name), [sheet])
  const recording = recordingFor(recordings, cells, cell)
  const own = props.own ?? {}
  return (
    <div class="bn-bench">
      <StateLine {...props} shownCell={recording?.cell ?? cell} />
      <Printed lines={props.printed ?? nonePrinted} />
      {recording ? (
        <Motion {...props} recording={recording} />
      ) : (
        <>
          <EmptyBench sheet={sheet} cell={cell} running={props.running} />
          {problem && <ProblemNote problem={problem} kept={false} />}
          {sheet.parameters.length > 0 && (
            <Drawer sheet={sheet.id} name="parameters" title="Parameters" open={true}>
              {() => (
                <Parameters
                  parameters={sheet.parameters}
                  values={props.parameters}
                  own={own}
                  onParameter={props.onParameter}
                  onReset={props.onResetParameters}
                />
              )}
            </Drawer>
          )}
        </>
      )}
    </div>
  )
}

function Motion(props: BenchProps & { readonly recording: Recording }) {
  const { sheet, recording, departures, problem } = props
  const first = useMemo(() => firstDeparture(departures), [departures])
  const study = studyOf(recording)
  const scene = sheet.scenes.find(s => s.cell === recording.cell) ?? null
  const ghost = shadow(props.ghost, recording.cell)
  const reference = shadow(props.reference?.runs[0] ?? null, recording.cell)
  const label = useCallback((body: string) => labelOf(scene, body), [scene])
  const clock = usePlayer(study.timeline)
  const still = useMemo(() => matchMedia("(prefers-reduced-motion: reduce)").matches, [])
  const shown = useSignal({ ...shownAtFirst, strobe: still, forces: study.bodies.length <= 6 })
  const units = props.units ?? noUnits
  const own = useMemo(() => measured(study, units, label), [study, units, label])
  const theirs = useMemo(() => reference && measured(reference, units, label), [reference, units, label])
  const variables = props.variables ?? noVariables
  const plotted = useMemo(
    () => ({ ...own, quantities: [...own.quantities, ...sentQuantities(variables, own.quantities)] }),
    [own, variables],
  )
  const sent = useMemo(() => sentPlots(variables), [variables])
  const constants = useMemo(
    () =>
      sheet.parameters.map(({ name, value, unit }) => ({
        name,
        unit,
        value: props.parameters[name] ?? value,
      })),
    [sheet, props.parameters],
  )
  const words = useMemo(() => {
    const distances = study.bodies.flatMap(body => {
      const other = reference?.bodies.find(b => b.name === body.name)
      const found =
        other && reference
          ? distanceOf(
              { recording, timeline: study.timeline, body },
              { recording: reference.recording, timeline: reference.timeline, body: other },
            )
          : null
      return found ? [found] : []
    })
    return describe(study, {
      label: body => inSentence(scene, body),
      distances,
      departures,
      view: scene?.view ?? "side",
    })
  }, [study, reference, scene, departures, recording])
  const scales = useMemo(() => arrowScales(study, arrowRoom), [study])
  const plots = useMemo(() => sheet.plots.filter(p => p.cell === recording.cell), [sheet, recording.cell])
  const wordsId = useId()
  useHand(props.hand, study, clock)
  return (
    <>
      <div class="bn-stage">
        <Scene
          study={study}
          scene={scene}
          ghost={ghost}
          reference={reference}
          departure={first}
          scales={scales}
          clock={clock}
          shown={shown}
          describedBy={wordsId}
        />
        {study.bodies.some(b => b.forces.length > 0) && (
          <FreeBody study={study} scene={scene} clock={clock} />
        )}
        <Legend
          study={study}
          ghost={ghost !== null}
          reference={reference !== null}
          shown={shown}
          scales={scales}
        />
        <TimeBar study={study} departsAt={first?.instant ?? null} clock={clock} label={label} />
      </div>
      {problem && <ProblemNote problem={problem} kept={!props.older} />}
      {sheet.parameters.length > 0 && (
        <Drawer sheet={sheet.id} name="parameters" title="Parameters" open={true}>
          {() => (
            <Parameters
              parameters={sheet.parameters}
              values={props.parameters}
              own={props.own ?? {}}
              onParameter={props.onParameter}
              onReset={props.onResetParameters}
            />
          )}
        </Drawer>
      )}
      <Drawer sheet={sheet.id} name="plots" title="Plots" open={true} calls={variables.length}>
        {() => (
          <PlotsDrawer
            own={plotted}
            reference={theirs}
            blocks={plots}
            data={sheet.data}
            constants={constants}
            sent={sent}
            onDrop={props.onDropVariable ?? nothing}
            clock={clock}
          />
        )}
      </Drawer>
      <Drawer sheet={sheet.id} name="books" title="Books" note="momentum, forces, energy" open={false}>
        {() => (
          <BooksDrawer
            own={own}
            reference={theirs}
            clock={clock}
            label={label}
            view={scene?.view ?? "side"}
          />
        )}
      </Drawer>
      {props.stepping && <Steps {...props} stepping={props.stepping} scene={scene} label={label} />}
      <section class="bn-words" aria-label="the motion in words">
        <h2>In words</h2>
        <p id={wordsId}>{words.join(" ")}</p>
      </section>
      <Drawer sheet={sheet.id} name="values" title="Values" note="at chosen times" open={false}>
        {() => <ValueTable study={study} quantities={own.quantities} clock={clock} />}
      </Drawer>
    </>
  )
}

function Steps({
  sheet,
  recording,
  scene,
  stepping,
  label,
}: {
  sheet: BenchProps["sheet"]
  recording: Recording
  scene: SceneBlock | null
  stepping: StepStudying
  label: (body: string) => string
}) {
  return (
    <Drawer sheet={sheet.id} name="steps" title="Time step" note="what a shorter one changes" open={false}>
      {() => (
        <StepDrawer
          stepping={stepping}
          cell={recording.cell}
          dt={sheet.timeStep}
          label={label}
          inSentence={body => inSentence(scene, body)}
        />
      )}
    </Drawer>
  )
}

const noUnits = {}
const nonePrinted: readonly string[] = []
const noVariables: readonly SentVariable[] = []
const nothing = (): void => undefined

function measured(
  study: Study,
  units: Readonly<Record<string, string>>,
  label: (body: string) => string,
): Measured {
  return { study, quantities: quantitiesOf(study, units, label) }
}

function shadow(recordings: readonly Recording[] | null, cell: string): Study | null {
  const found = recordings?.find(r => r.cell === cell && r.rows > 0)
  return found ? studyOf(found) : null
}
