// The checks of the visit: what a person looked at, apart from what is measured.
import { say } from "./words.js";

export const ITEMS = ["cord", "gasket", "jar", "tubing", "filter", "overflow", "outside"];
const STATES = ["ok", "not-ok", "replaced", "not-checked"];

export class Checks {
  constructor(form, changed) {
    this.form = form;
    this.changed = changed;
    form.addEventListener("change", () => this.said());
    form.addEventListener("submit", (event) => event.preventDefault());
  }

  said() {
    this.reveal();
    this.changed(this.given());
  }

  /** Draws the list anew, with what has been said so far. */
  show(checks) {
    const said = new Map(checks.map((check) => [check.item, check]));
    this.form.replaceChildren(...ITEMS.map((item) => row(item, said.get(item))));
    this.reveal();
  }

  reveal() {
    for (const set of this.form.querySelectorAll("fieldset")) {
      const state = new FormData(this.form).get(set.dataset.item);
      set.querySelector(".part").hidden = state !== "replaced";
      set.querySelector(".reason").hidden = state !== "replaced" && state !== "not-ok";
    }
  }

  /** All that was looked at. */
  given() {
    const data = new FormData(this.form);
    return ITEMS.map((item) => check(item, data)).filter((one) => one.state && one.state !== "not-checked");
  }
}

function check(item, data) {
  const state = data.get(item);
  const part = state === "replaced" ? data.get(`${item}-part`)?.trim() : "";
  const reason = state === "replaced" || state === "not-ok" ? data.get(`${item}-reason`)?.trim() : "";
  return { item, state, ...(part && { part }), ...(reason && { reason }) };
}

function row(item, said) {
  const set = element("fieldset", { "data-item": item });
  set.append(element("legend", {}, say(`check.${item}`)));
  const choices = element("div", { class: "choices" });
  for (const state of STATES) choices.append(choice(item, state, (said?.state ?? "not-checked") === state));
  const more = element("div", { class: "more" });
  more.append(field(item, "part", said?.part), field(item, "reason", said?.reason));
  set.append(choices, more);
  return set;
}

function choice(item, state, checked) {
  const label = element("label");
  const input = element("input", { type: "radio", name: item, value: state });
  input.checked = checked;
  label.append(input, say(`state.${state}`));
  return label;
}

function field(item, name, value) {
  const label = element("label", { class: name }, say(`check.${name}`));
  const input = element("input", { name: `${item}-${name}`, maxlength: "100" });
  input.value = value ?? "";
  label.append(input);
  return label;
}

export function element(name, attributes = {}, text) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  if (text !== undefined) made.textContent = text;
  return made;
}
