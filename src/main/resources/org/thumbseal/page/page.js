// The bench page: puts what the program says in front of a person, and what the person says before the program.
import { Bench, tell } from "./bench.js";
import { Checks, element } from "./checks.js";
import { Curve } from "./curve.js";
import { showFacts } from "./facts.js";
import { whatNow } from "./now.js";
import { aboutPump, isUnlisted, offer } from "./register.js";
import { listenToScanner } from "./scanner.js";
import { forget, isSought, keep, lost, showSeek } from "./seek.js";
import { inUnit, placesOf, UNITS } from "./units.js";
import { showVerdict, showVisit } from "./verdict.js";
import { has, keepLanguage, label, languageNow, loadWords, number, remember, remembered, say } from "./words.js";

const UNIT = "thumbseal.unit";
const $ = (id) => document.getElementById(id);

let chosen;
let putAway = null;
/** What was looked at last, by sensor: the pump at one has not been looked at because that at another was. */
const lookedAt = new Map();
/** The pump that somebody is asked about before its leak is sought. */
let asking;
let drawing = false;
let saidNow = "";

const languages = await loadWords();
const curve = new Curve($("curve"));
const checks = new Checks($("check-form"), (given) => visit({ checks: given }));
setUp();
const bench = new Bench(changed);
show();

function port() {
  if (!bench.ports.has(chosen)) chosen = bench.ports.keys().next().value;
  return bench.ports.get(chosen);
}

function isJudged(p) {
  // A test of a search says nothing about the pump: most are made without its jar.
  return Boolean(p?.result && !p.result.ofSearch && !isSought(p) && p.result.id !== putAway && !p.start && !["rise", "hold", "decay"].includes(p.phase));
}

function changed(what) {
  if (what === "bench" || what === "silent") drawChecks();
  if (!drawing) {
    drawing = true;
    requestAnimationFrame(() => {
      drawing = false;
      show();
    });
  }
}

function show() {
  const p = port();
  const judged = isJudged(p);
  document.querySelector("main").classList.toggle("judged", judged);
  showPorts();
  showNow(p, judged);
  showReading(p);
  curve.draw(judged ? { ...p, blockedAt: p.result.blockedAt ?? p.blockedAt } : p, bench.points.get(chosen) ?? []);
  showAnswer(p, judged);
  showSearch(p);
  showActions(p, judged);
  offer($("known"), bench.about?.register);
  showFacts($("facts"), $("notices"), p, bench);
}

function showPorts() {
  const names = [...bench.ports.keys()];
  $("ports").hidden = names.length < 2;
  if ($("ports").children.length !== names.length) {
    $("ports").replaceChildren(...names.map((name) => portButton(name)));
  }
  [...$("ports").children].forEach((button, i) => {
    const p = bench.ports.get(names[i]);
    button.textContent = `${p.visit?.asset ?? p.search?.asset ?? names[i]} · ${standing(p)}`;
    button.setAttribute("aria-pressed", String(names[i] === chosen));
    button.dataset.port = names[i];
  });
}

/** The answer where there is one: with several pumps on the bench, only one is shown in full. */
function standing(p) {
  if (isJudged(p)) return say(`verdict.${p.result.verdict}`);
  return say(`phase.${p.link === "streaming" ? p.phase : "none"}`);
}

function portButton(name) {
  const button = element("button", { type: "button", "data-port": name });
  button.addEventListener("click", () => {
    chosen = button.dataset.port;
    asking = undefined;
    drawChecks();
    show();
  });
  return button;
}

function showNow(p, judged) {
  const now = whatNow(p, bench.alive, judged, asking);
  const sentence = say(now.key, ...(now.values ?? []).map((key) => say(key)));
  $("now").dataset.tone = now.tone;
  $("now").toggleAttribute("data-short", sentence.length <= 9);
  // Only what is new is put there: each change is read aloud.
  if (sentence !== saidNow) $("sentence").textContent = saidNow = sentence;
  const left = p?.start && bench.alive && now.tone !== "stop" ? Math.max(0, p.start.secondsLeft - (Date.now() - p.start.told) / 1000) : undefined;
  const countdown = left !== undefined && ["idle", "open"].includes(p.phase) ? " " + say("hint.left", number(left, 0)) : "";
  $("hint").textContent = (now.hint ? say(now.hint) : now.said ?? "") + countdown;
}

function showReading(p) {
  const known = bench.alive && p?.link === "streaming" && p.vacuum !== undefined;
  $("reading").classList.toggle("stale", !known && p?.vacuum !== undefined);
  // Beside an answer it would be read as belonging to it.
  $("pump").textContent = nameOf(p) ?? (isJudged(p) ? "" : say("asset.none"));
  $("about").textContent = aboutPump(bench.about?.register, nameOf(p));
  $("kpa").textContent = p?.vacuum === undefined ? "–" : number(Math.abs(p.vacuum) < 0.05 ? 0 : p.vacuum, 1);
  $("vacuum").toggleAttribute("data-long", $("kpa").textContent.length > 4);
  const unit = $("unit").value;
  $("other").textContent = unit && p?.vacuum !== undefined ? `${number(inUnit(p.vacuum, unit), placesOf(unit))} ${unit}` : "";
  const blocked = ["rise", "hold", "decay"].includes(p?.phase) && p.blockedAt !== undefined;
  $("elapsed").textContent = blocked ? say("elapsed", number(p.clock - p.blockedAt, 1)) : "";
  $("curve").setAttribute("aria-label", say("curve.label", say(`phase.${p?.phase ?? "none"}`)));
}

function showAnswer(p, judged) {
  const section = $("verdict");
  if (section.hidden && judged && document.activeElement === document.body) section.focus?.({ preventScroll: true });
  section.hidden = !judged;
  const key = judged ? `${p.result.id} ${p.result.stored} ${languageNow()}` : "";
  if (judged && section.dataset.shown !== key) showVerdict(section, p.result);
  section.dataset.shown = key;
  if (judged) showVisit(section, p);
}

function nameOf(p) {
  return p?.visit?.asset ?? (isSought(p) ? p.search.asset : undefined);
}

function showSearch(p) {
  if (p?.search) asking = undefined;
  if (bench.alive && p?.search) keep(p);
  document.querySelector("main").classList.toggle("sought", isSought(p) || Boolean(asking));
  document.querySelector("main").classList.toggle("asking", Boolean(asking) || (isSought(p) && p.search.standing === "over"));
  showSeek($("seek"), { asking, gone: bench.alive ? lost(p) : undefined, search: p?.search, deeds: seek });
}

async function seek(deed) {
  const p = port();
  if (deed === "not-now") {
    asking = undefined;
    $("find").hidden = false;
    $("find").focus();
  } else if (deed === "close" && !p?.search) forget(chosen);
  else if (deed === "begin") await ask("begin", { asset: asking });
  else if (deed === "new") await ask("begin", { asset: p.search.asset });
  else if (deed === "close") await close(p.search.asset);
  else if (deed === "end" && (await ask("end"))) forget(chosen);
  else if (deed !== "end") await ask(deed);
  changed();
}

async function ask(what, more = {}) {
  return answered(await tell("search", { port: chosen, what, step: port()?.search?.step ?? 0, ...more }));
}

/** What was mended is to be tested: the pump stays named. */
async function close(asset) {
  if (await ask("end")) await visit({ asset, checks: [] });
}

function showActions(p, judged) {
  const busy = ["rise", "hold", "decay"].includes(p?.phase);
  $("start").disabled = !bench.alive || p?.link !== "streaming" || busy || Boolean(p?.visit?.forbidsMains) || (isSought(p) && p.phase !== "idle");
  $("start").textContent = say(judged ? "start.again" : p?.start ? "start.anew" : isSought(p) ? "seek.ready" : "start");
  $("start").hidden = Boolean(asking) || (isSought(p) && p.search.standing !== "seeking");
  $("find").hidden = !bench.alive || Boolean(asking || p?.search || busy || p?.start) || !(p?.visit?.asset ?? (judged ? p.result.asset : undefined));
  $("next").hidden = !judged;
  const given = p?.visit?.checks?.filter((c) => c.state !== "not-checked").length ?? 0;
  $("open-checks").textContent = say("checks.open", number(given, 0), number(7, 0));
  $("cord-caution").hidden = !p?.visit?.forbidsMains;
}

function drawChecks() {
  if (!$("check-form").contains(document.activeElement)) checks.show(port()?.visit?.checks ?? []);
}

function answered(answer, good = "") {
  const key = `error.${answer.error}`;
  $("said").textContent = answer.error ? (has(key) ? say(key) : answer.text ?? answer.error) : good;
  $("said").classList.toggle("good", !answer.error);
  return !answer.error;
}

async function visit({ asset = port()?.visit?.asset ?? null, checks: given = port()?.visit?.checks ?? [] }) {
  if (given.length) lookedAt.set(chosen, { asset, checks: given });
  return answered(await tell("visit", { port: chosen, asset, checks: given }));
}

async function take(text) {
  const code = await tell("scan", { text });
  if (!answered(code)) {
    // What is scanned next takes its place, instead of being added to it.
    $("asset").select();
    return;
  }
  putAway = port()?.result?.id ?? null;
  asking = undefined;
  const given = sameAsset(code.asset);
  if (await visit({ asset: code.asset, checks: given })) {
    $("asset").value = "";
    checks.show(given);
    answered({}, say(isUnlisted(bench.about?.register, code.asset) ? "asset.unlisted" : "asset.taken", code.asset));
    $("start").focus();
  }
}

/** Another pump has not been looked at yet. */
function sameAsset(asset) {
  return (port()?.visit?.asset ?? asset) === asset ? port()?.visit?.checks ?? [] : [];
}

async function start() {
  const p = port();
  if (isJudged(p)) {
    // The same pump once more, with what was looked at a moment ago.
    const asset = p.visit?.asset ?? p.result.asset ?? null;
    const before = lookedAt.get(chosen);
    const known = before && (before.asset ?? null) === asset ? before.checks : [];
    if (!(await visit({ asset, checks: p.visit?.checks?.length ? p.visit.checks : known }))) return;
  }
  if (answered(await tell("start", { port: chosen }))) putAway = p?.result?.id ?? null;
  changed();
}

async function next() {
  putAway = port()?.result?.id ?? null;
  lookedAt.delete(chosen);
  await visit({ asset: null, checks: [] });
  drawChecks();
  $("asset").focus();
}

/** First what has to be heeded. */
function find() {
  const p = port();
  asking = p?.visit?.asset ?? p?.result?.asset;
  forget(chosen);
  show();
  // From the first caution on, not from the button that says that all were heeded.
  window.scrollTo(0, 0);
  $("seek-title").focus({ preventScroll: true });
}

function openChecks(open) {
  $("checks").hidden = !open;
  $("open-checks").setAttribute("aria-expanded", String(open));
  if (open) drawChecks();
  (open ? $("check-form").querySelector("input:checked") : $("open-checks"))?.focus();
}

function setUp() {
  label(document);
  const names = new Intl.DisplayNames([languageNow()], { type: "language" });
  $("language").replaceChildren(...languages.map((tag) => new Option(new Intl.DisplayNames([tag], { type: "language" }).of(tag) ?? names.of(tag), tag)));
  $("language").value = languageNow();
  $("unit").replaceChildren(new Option("–", ""), ...UNITS.map((unit) => new Option(unit, unit)));
  $("unit").value = remembered(UNIT) ?? "";
  $("language").addEventListener("change", () => changeLanguage($("language").value));
  $("unit").addEventListener("change", () => (remember(UNIT, $("unit").value), show()));
  $("asset-form").addEventListener("submit", (event) => {
    event.preventDefault();
    take($("asset").value);
  });
  $("start").addEventListener("click", start);
  $("next").addEventListener("click", next);
  $("find").addEventListener("click", find);
  $("open-checks").addEventListener("click", () => openChecks($("checks").hidden));
  $("close-checks").addEventListener("click", () => openChecks(false));
  $("checks").addEventListener("keydown", (event) => event.key === "Escape" && openChecks(false));
  window.addEventListener("resize", () => changed());
  listenToScanner($("asset"));
  // The countdown goes on where nothing comes.
  setInterval(changed, 500);
}

async function changeLanguage(tag) {
  keepLanguage(tag);
  await loadWords(tag);
  label(document);
  saidNow = "";
  drawChecks();
  show();
}
