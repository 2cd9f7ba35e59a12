// What the program says, as it says it. Notices when it falls silent, and takes it up again by itself.

const LONGEST_SILENCE = 6000;
const AGAIN = 5000;
const KEPT_SECONDS = 125;

export class Bench {
  constructor(changed) {
    this.changed = changed;
    this.alive = false;
    this.heard = 0;
    this.ports = new Map();
    this.points = new Map();
    this.notices = [];
    this.listen();
    setInterval(() => this.watch(), 1000);
  }

  listen() {
    this.source?.close();
    this.tried = Date.now();
    this.source = new EventSource("/events");
    const on = (name, take) =>
      this.source.addEventListener(name, (event) => {
        this.hear();
        take(JSON.parse(event.data));
        this.changed(name);
      });
    on("bench", (bench) => this.whole(bench));
    on("port", (change) => this.port(change));
    on("points", (more) => this.add(more));
    on("notice", (notice) => (this.notices = [...this.notices, notice].slice(-20)));
    on("register", ({ register }) => (this.about = { ...this.about, register }));
    on("beat", () => {});
    this.source.onerror = () => this.silent();
  }

  hear() {
    this.heard = Date.now();
    this.alive = true;
  }

  silent() {
    if (this.alive) {
      this.alive = false;
      this.changed("silent");
    }
  }

  watch() {
    if (this.alive && Date.now() - this.heard > LONGEST_SILENCE) this.silent();
    if (!this.alive && Date.now() - this.tried > AGAIN) this.listen();
  }

  whole(bench) {
    this.about = bench;
    this.notices = bench.notices ?? [];
    this.ports = new Map(bench.ports.map(({ curve, ...port }) => [port.port, stamped(port)]));
    this.points = new Map(bench.ports.map((port) => [port.port, port.curve ?? []]));
  }

  port(change) {
    const port = { ...(this.ports.get(change.port) ?? {}), ...change };
    for (const [name, value] of Object.entries(port)) if (value === null) delete port[name];
    this.ports.set(change.port, "start" in change || "phase" in change ? stamped(port) : port);
  }

  add({ port, points }) {
    const kept = this.points.get(port) ?? [];
    const first = points[0]?.[0] ?? 0;
    // A device clock that goes back is another sensor, or one that started anew.
    const before = kept.length && kept[kept.length - 1][0] > first ? [] : kept;
    const all = before.concat(points);
    const newest = all.length ? all[all.length - 1] : undefined;
    const from = all.findIndex((p) => p[0] >= newest[0] - KEPT_SECONDS);
    this.points.set(port, from > 0 ? all.slice(from) : all);
    const known = this.ports.get(port);
    if (known && newest) Object.assign(known, { vacuum: newest[1], clock: newest[0] });
  }
}

/** When a countdown was told, so that the page can go on counting. */
function stamped(port) {
  return port.start ? { ...port, start: { ...port.start, told: port.start.told ?? Date.now() } } : port;
}

export async function tell(what, body) {
  try {
    const answer = await fetch(`/do/${what}`, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
    });
    const said = await answer.json().catch(() => ({}));
    return answer.ok ? said : { error: said.code ?? "bad-request", text: said.text };
  } catch {
    return { error: "no-answer" };
  }
}
