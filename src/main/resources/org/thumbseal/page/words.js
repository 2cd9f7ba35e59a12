// What the page says, in the language of who reads it. Words come from the program's own files.

const KEPT = "thumbseal.language";
let words = {};
let language = "en";

export async function loadWords(wanted) {
  const known = await (await fetch("/languages.json")).json();
  language = pick(known, wanted);
  words = await (await fetch(`/words/${language}.json`)).json();
  document.documentElement.lang = language;
  return known;
}

function pick(known, wanted) {
  const asked = [wanted, keptLanguage(), ...(navigator.languages ?? [])].filter(Boolean);
  const found = asked.map((tag) => tag.split("-")[0].toLowerCase()).find((tag) => known.includes(tag));
  return found ?? "en";
}

function keptLanguage() {
  return remembered(KEPT);
}

export function keepLanguage(tag) {
  remember(KEPT, tag);
}

export function languageNow() {
  return language;
}

/** The words of a key, {0}, {1} ... filled in; the key itself where there are none. */
export function say(key, ...values) {
  const text = words[key] ?? key;
  return text.replace(/\{(\d)\}/g, (_, n) => values[Number(n)] ?? "");
}

export function has(key) {
  return key in words;
}

export function number(value, places) {
  return new Intl.NumberFormat(language, {
    minimumFractionDigits: places,
    maximumFractionDigits: places,
  }).format(value);
}

/** A limit as it was set: rounded, it would be another. */
export function limit(value) {
  return new Intl.NumberFormat(language, { maximumFractionDigits: 2 }).format(value);
}

/** Puts the words on everything that names them. */
export function label(root) {
  root.querySelectorAll("[data-word]").forEach((e) => (e.textContent = say(e.dataset.word)));
  root.querySelectorAll("[data-label]").forEach((e) => e.setAttribute("aria-label", say(e.dataset.label)));
}

// A browser may refuse to keep anything; then the choice lasts as long as the page.
export function remembered(key) {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

export function remember(key, value) {
  try {
    localStorage.setItem(key, value);
  } catch {
    // nothing to do: see above
  }
}
