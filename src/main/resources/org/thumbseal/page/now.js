// The one sentence: what to do now, from what is known of a port. A pure function.
import { foundIn, isSought, station } from "./seek.js";

/** Quiet before the pump starts gives the zero; the open vacuum needs some seconds too. */
export const QUIET_SECONDS = 5;

/**
 * @returns {{key: string, values?: string[], hint?: string, said?: string, tone: "act"|"wait"|"stop"|"still"|"done"}}
 *   the words to say, and whether something is to be done, waited for or not done
 */
export function whatNow(port, alive, judged, asking) {
  if (!alive) return { key: "now.stopped", hint: "hint.stopped", tone: "still" };
  if (!port) return { key: "now.no-port", tone: "still" };
  if (port.visit?.forbidsMains) return cord(port);
  if (isSought(port)) return sought(port);
  if (asking && ["none", "idle"].includes(port.phase)) return { key: "now.seek.read", hint: "hint.seek.read", tone: "stop" };
  return (judged && answered(port.result) ? gone(port) : link(port)) ?? blocked(port) ?? (judged ? verdict(port.result) : waiting(port));
}

/** An answer stands, whatever becomes of the sensor after it. */
function sought(port) {
  const { search } = port;
  if (search.standing === "over") return blocked(port) ?? { ...foundIn(search.answer), hint: "hint.seek.over", tone: search.answer.code === "tight" ? "done" : "stop" };
  if (search.standing === "unsealed") return { key: "now.seek.unsealed", hint: "hint.seek.unsealed", tone: "stop" };
  return link(port) ?? blocked(port) ?? seek(port);
}

/** One station after the other; a hose is moved only when the pump is off and unplugged. */
function seek(port) {
  const { search } = port;
  const values = [station(search)];
  if (["open", "release"].includes(port.phase) && search.running) return { key: "now.seek.off", hint: "hint.seek.off", tone: "act" };
  if (port.phase === "release") return { key: "now.working", tone: "wait" };
  if (port.result?.ofSearch && !port.result.stored) return { key: "now.seek.waits", hint: "sealed.not", tone: "stop" };
  if (port.phase === "open") return since(port) < QUIET_SECONDS ? open(port) : { key: "now.seek.block", values, hint: "hint.block", tone: "act" };
  if (!port.start) return { key: "now.seek.set-up", values, hint: search.withJar ? "hint.seek.with-jar" : "hint.seek.without-jar", tone: "act" };
  return quietThenOn(port);
}

/** A pump that runs already is not told to stay off. */
function cord(port) {
  const runs = port.link === "streaming" && ["open", "rise", "hold"].includes(port.phase);
  return { key: runs ? "now.cord-runs" : "now.cord", hint: "hint.cord", tone: "stop" };
}

/** One that could not be judged has to be repeated, and for that the sensor is needed. */
function answered(result) {
  return result.verdict !== "invalid";
}

/** An answer stands, whatever becomes of the sensor after it. */
function gone(port) {
  return port.link === "streaming" ? undefined : { ...verdict(port.result), hint: "hint.stands" };
}

function link(port) {
  switch (port.link) {
    case "streaming":
      return undefined;
    case "lost":
      return { key: "now.unplugged", hint: "hint.unplugged", tone: "stop" };
    case "ended":
      return { key: "now.ended", tone: "still" };
    case "opening":
    case "settling":
      return { key: "now.connecting", said: port.linkText, tone: "wait" };
    default:
      return { key: "now.no-sensor", hint: "hint.no-sensor", tone: "still" };
  }
}

function blocked(port) {
  switch (port.phase) {
    case "rise":
      return { key: "now.hold", hint: "hint.hold", tone: "wait" };
    case "hold":
      return { key: "now.let-go", hint: "hint.let-go", tone: "act" };
    case "decay":
      return { key: "now.let-go", hint: "hint.decay", tone: "act" };
    default:
      return undefined;
  }
}

function verdict(result) {
  return { key: `now.${result.verdict}`, hint: `hint.${result.verdict}`, tone: result.verdict === "fail" ? "stop" : "done" };
}

function waiting(port) {
  if (port.phase === "release") return { key: "now.working", tone: "wait" };
  if (port.phase === "open") return open(port);
  if (!port.start) {
    return port.visit?.asset
      ? { key: "now.press", hint: "hint.press", tone: "act" }
      : { key: "now.scan", hint: "hint.scan", tone: "act" };
  }
  return quietThenOn(port);
}

function quietThenOn(port) {
  return port.zeroKnown || since(port) >= QUIET_SECONDS
    ? { key: "now.switch-on", hint: "hint.switch-on", tone: "act" }
    : { key: "now.quiet", hint: "hint.quiet", tone: "wait" };
}

function open(port) {
  return since(port) < QUIET_SECONDS
    ? { key: "now.run", hint: "hint.run", tone: "wait" }
    : { key: "now.block", hint: "hint.block", tone: "act" };
}

function since(port) {
  return (port.clock ?? 0) - (port.phaseAt ?? 0);
}
