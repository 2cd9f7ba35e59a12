// The pumps that somebody keeps a list of: offered where a pump is named, and told apart where one is on the bench.
import { element } from "./checks.js";

let offered;

/** Puts them into the list that a field suggests from; only where they have changed. */
export function offer(list, pumps) {
  if (pumps === offered) return;
  offered = pumps;
  list.replaceChildren(...(pumps ?? []).map((pump) => element("option", { value: pump.id, label: [pump.id, ...words(pump)].join(" · ") })));
}

/** What people know a pump by; empty where nothing is said of it. */
export function aboutPump(pumps, id) {
  return words(pumps?.find((pump) => pump.id === id) ?? {}).join(" · ");
}

/** Whether there is a list and the pump is not in it. */
export function isUnlisted(pumps, id) {
  return Boolean(pumps) && !pumps.some((pump) => pump.id === id);
}

function words({ description, location }) {
  return [description, location].filter(Boolean).map((text) => text.replace(/\s+/g, " ").trim());
}
