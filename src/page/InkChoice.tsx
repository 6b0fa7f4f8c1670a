import { chooseInk, type Ink, ink } from "./ink.ts"

const choices: readonly { readonly ink: Ink; readonly word: string }[] = [
  { ink: "system", word: "as the device" },
  { ink: "light", word: "light" },
  { ink: "dark", word: "dark" },
]

/** Light or dark paper, as a line of words to choose from. */
export function InkChoice() {
  return (
    <fieldset class="ink-choice">
      <legend>Paper</legend>
      {choices.map(choice => (
        <label key={choice.ink}>
          <input
            type="radio"
            name="ink"
            checked={ink.value === choice.ink}
            onChange={() => chooseInk(choice.ink)}
          />
          <span>{choice.word}</span>
        </label>
      ))}
    </fieldset>
  )
}
