// The answer: a word, a shape, the figures beside their limits, why, and what to look at next.
import { element } from "./checks.js";
import { has, limit, number, say } from "./words.js";

// A word's form and sign, as the report draws them.
const SHAPES = await (await fetch("/shapes.json")).json();

export function showVerdict(section, result) {
  const part = (id) => section.querySelector(id);
  section.dataset.verdict = result.verdict;
  part("#word").textContent = say(`verdict.${result.verdict}`);
  part("#of").textContent = result.asset ?? say("asset.none");
  part("#shape .form").setAttribute("d", SHAPES[result.verdict][0]);
  part("#shape .sign").setAttribute("d", SHAPES[result.verdict][1]);
  part("#figures").replaceChildren(...figures(result));
  part("#reasons").replaceChildren(...result.reasons.map(reason));
  part("#finding").replaceChildren(...finding(result.findings?.[0]));
  part("#sealed").classList.toggle("waiting", !result.stored);
  part("#sealed").textContent = result.stored ? say("sealed", result.file ?? "") : say("sealed.not");
}

/** Whose result it is, and whether what was said at the bench goes on. */
export function showVisit(section, { result, visit }) {
  const over = visit?.asset ? "" : say("visit.over");
  section.querySelector("#visit").textContent = result.verdict === "invalid" ? say("visit.stays") : over;
  section.querySelector("#unassigned").textContent = result.asset ? "" : say("unassigned", result.file ?? "RESULT.json");
}

function figures({ riseTime, maximumVacuum, openVacuum, limits }) {
  const lines = [];
  if (limits && (riseTime || maximumVacuum)) {
    const rise = say("figure.rise", number(limits.rise, 1));
    lines.push([rise, riseTime ? say("figure.of", both(riseTime, 2, "s"), limit(limits.riseSeconds) + "\u00a0s") : say("figure.not-reached")]);
  }
  if (maximumVacuum) lines.push([say("figure.maximum"), say("figure.at-least", both(maximumVacuum, 2, "kPa"), number(limits.maximum, 1) + "\u00a0kPa")]);
  if (openVacuum) lines.push([say("figure.open"), both(openVacuum, 2, "kPa")]);
  return lines.flatMap(([name, value]) => [element("dt", {}, name), element("dd", {}, value)]);
}

function both({ value, expandedUncertainty }, places, unit) {
  return `${number(value, places)}\u00a0±\u00a0${number(expandedUncertainty, places)}\u00a0${unit}`;
}

/** In the reader's words what kind of thing it is; the numbers as they stand in the document. */
function reason({ code, text }) {
  const item = element("li");
  const short = `reason.${code}`;
  item.append(element("strong", {}, has(short) ? say(short) : code), " ", element("span", { class: "said", lang: "en" }, text));
  return item;
}

function finding(first) {
  if (!first) return [];
  const short = `finding.${first.code}`;
  return [
    element("strong", {}, say("finding", has(short) ? say(short) : first.code, number(100 * first.confidence, 0))),
    element("span", { class: "said", lang: "en" }, `${first.text} ${first.advice}`),
  ];
}
