import "./fonts.css"
import "./tokens.css"
import "./base.css"
import { render } from "preact"
import { App } from "./App.tsx"
import { followAddress } from "./address.ts"
import { recallSuggesting } from "./editor/suggesting.ts"
import { recallInk } from "./ink.ts"

recallInk()
recallSuggesting()
followAddress()
const place = document.getElementById("page")
if (place) {
  place.textContent = ""
  render(<App />, place)
}
