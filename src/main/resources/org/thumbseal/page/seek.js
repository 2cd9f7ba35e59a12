// The search for a leak: what it asks to be heeded first, what each test told, and what came out.
import { element } from "./checks.js";
import { has, number, remember, remembered, say } from "./words.js";

const CAUTIONS = ["patient", "gloves", "mains", "joint"];
const KEPT = "thumbseal.search.";

/** Whether the page is about the search, and not about the pump's own test. */
export function isSought(port) {
  const search = port?.search;
  if (!search || search.standing === "resting") return false;
  return search.standing !== "over" || !(port.visit?.asset || port.start);
}

/** What was under way here when this was looked at last, and is not there any more. */
export function lost(port) {
  if (!port || port.search) return undefined;
  try {
    return JSON.parse(remembered(KEPT + port.port)) ?? undefined;
  } catch {
    return undefined;
  }
}

/** So that it can be said what a stopped program has lost. */
export function keep(port) {
  const search = port.search;
  if (search) remember(KEPT + port.port, search.standing === "over" ? "null" : JSON.stringify({ asset: search.asset, resumed: search.resumed }));
}

export function forget(name) {
  remember(KEPT + name, "null");
}

/** @param about {asking, gone, search, deeds}: a pump that is asked about, a search that is lost, one there is */
export function showSeek(section, about) {
  const part = (id) => section.querySelector(`#seek-${id}`);
  const { asking, gone, search, deeds } = about;
  section.hidden = !asking && !gone && !search;
  const key = section.hidden ? "" : JSON.stringify([asking, gone, search, document.documentElement.lang]);
  if (section.dataset.shown === key) return;
  section.dataset.shown = key;
  if (section.hidden) return;
  part("title").textContent = say("seek.title", (asking ?? search?.asset ?? gone?.asset) || "");
  part("state").textContent = state(about);
  part("cautions").replaceChildren(...(asking ? CAUTIONS : []).map((one) => element("li", {}, say(`seek.caution.${one}`))));
  part("told").textContent = told(about);
  part("advice").textContent = asking ? "" : search?.answer?.advice ?? "";
  part("file").textContent = asking || !search?.answer ? "" : say("sealed", search.answer.file);
  const earlier = asking ? [] : (search?.lines ?? []).slice(0, search?.answer ? undefined : -1);
  part("earlier").hidden = !earlier.length;
  part("lines").replaceChildren(...earlier.map((line) => element("li", {}, line)));
  buttons(part("buttons"), which(about), deeds);
}

function state({ asking, gone, search }) {
  if (asking) return say("seek.first");
  if (gone) return gone.resumed ? say("seek.lost", gone.resumed) : say("seek.lost-all");
  if (search.standing === "resting") return say("seek.rests");
  if (search.standing === "unsealed") return search.trouble;
  const tests = say("seek.tests", number(search.tests, 0));
  return search.again && search.standing === "seeking" ? `${tests} ${say("seek.again", say(station(search)))}` : tests;
}

function told({ asking, search }) {
  if (asking || !search) return "";
  return search.answer?.sentence ?? search.lines[search.lines.length - 1] ?? "";
}

function which({ asking, gone, search }) {
  if (asking) return ["begin", "not-now"];
  if (gone) return ["close"];
  if (search.standing === "resting") return ["go-on", "end"];
  if (search.standing === "unsealed") return ["seal"];
  if (search.standing === "over") return ["close", "new"];
  return [...(search.again ? ["forward"] : []), ...(search.canGoBack ? ["back"] : []), "rest"];
}

/** The same buttons stay, so that the focus does. */
function buttons(row, names, deeds) {
  const there = [...row.children].map((button) => button.dataset.deed);
  if (there.join() !== names.join()) {
    row.replaceChildren(...names.map((name) => element("button", { type: "button", "data-deed": name })));
  }
  for (const button of row.children) {
    button.textContent = say(`seek.${button.dataset.deed}`);
    button.classList.toggle("main", ["begin", "go-on", "seal", "forward"].includes(button.dataset.deed));
    button.onclick = () => deeds(button.dataset.deed);
  }
}

/** The key of its name, or the name itself where this place has its own. */
export function station(search) {
  return search.stationName ?? `seek.station.${search.station}`;
}

/** The answer in a few words: the section by its name, where there is one. */
export function foundIn({ code, section, sectionName }) {
  const name = sectionName ?? `seek.section.${section}`;
  return { key: `now.seek.${code}`, values: sectionName || has(name) ? [name] : [] };
}
