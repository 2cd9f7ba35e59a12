// The quiet corner: what the line and the sensor are doing.
import { element } from "./checks.js";
import { limit, number, say } from "./words.js";

export function showFacts(list, notices, port, bench) {
  list.replaceChildren(...lines(port, bench).flatMap(([name, value]) => [element("dt", {}, name), element("dd", {}, value)]));
  notices.replaceChildren(...bench.notices.slice(-6).reverse().map(notice));
}

function notice({ at, text }) {
  return element("li", { lang: "en" }, `${new Date(at).toLocaleTimeString()} ${text}`);
}

function lines(port, bench) {
  if (!port) return [];
  const { sensor, quality = {}, ambient, limits } = port;
  const known = (value, places, unit) => (value === undefined ? say("fact.unknown") : `${number(value, places)} ${unit}`);
  return [
    [say("fact.port"), port.port],
    [say("fact.link"), port.linkText || port.link],
    [say("fact.sensor"), sensor ? `${sensor.id} (${sensor.firmware})` : say("fact.unknown")],
    [say("fact.calibrated"), say(port.calibrated ? "yes" : "no")],
    [say("fact.rate"), quality.rate === undefined ? say("fact.unknown") : `${number(quality.rate, 0)} / ${number(sensor?.rate ?? 0, 0)} Hz`],
    [say("fact.rejected"), `${number(quality.rejected ?? 0, 0)} / ${number(quality.lines ?? 0, 0)} ${causes(quality.rejectedBy)}`],
    [say("fact.gaps"), number(quality.gaps ?? 0, 0)],
    [say("fact.dropped"), number(quality.dropped ?? 0, 0)],
    [say("fact.zero"), known(quality.zero, 2, "kPa")],
    [say("fact.noise"), known(quality.noise, 3, "kPa")],
    [say("fact.ambient"), known(ambient, 1, "kPa")],
    [say("fact.limits"), limits ? say("fact.limits.are", number(limits.rise, 1), limit(limits.riseSeconds), number(limits.maximum, 1)) : ""],
    [say("fact.version"), bench.about?.version ?? ""],
  ];
}

function causes(by) {
  const some = Object.entries(by ?? {}).map(([cause, count]) => `${cause} ${count}`);
  return some.length ? `(${some.join(", ")})` : "";
}
