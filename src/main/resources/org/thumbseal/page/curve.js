// The curve and the ground it must not touch: vacuum against time, hatched where a sound pump never is.
import { limit, number, say } from "./words.js";

const BEFORE = 3;
const LEAST_SPAN = 15;
const ROLLING = 20;
const LEFT = 44;
const BOTTOM = 26;
const TOP = 10;
const RIGHT = 10;

export class Curve {
  constructor(canvas) {
    this.canvas = canvas;
    this.context = canvas.getContext("2d");
    const style = getComputedStyle(document.documentElement);
    this.colour = (name) => style.getPropertyValue(name).trim();
  }

  /** Draws the points of a port; time counts from the blocking as soon as there is one. */
  draw(port, points) {
    this.fit();
    const view = this.view(port, points);
    this.context.clearRect(0, 0, this.width, this.height);
    if (view.blockedAt !== undefined) this.forbidden(port, view);
    this.axes(view);
    if (view.blockedAt !== undefined) this.limits(port, view);
    this.line(points, view);
  }

  fit() {
    const ratio = window.devicePixelRatio || 1;
    const { width, height } = this.canvas.getBoundingClientRect();
    if (this.width !== width || this.height !== height || this.ratio !== ratio) {
      Object.assign(this, { width, height, ratio });
      this.canvas.width = Math.round(width * ratio);
      this.canvas.height = Math.round(height * ratio);
      this.hatch = undefined;
    }
    this.context.setTransform(ratio, 0, 0, ratio, 0, 0);
  }

  view(port, points) {
    const newest = points.length ? points[points.length - 1][0] : 0;
    const blockedAt = port?.blockedAt ?? undefined;
    const highest = points.reduce((most, p) => (p[0] >= newest - 120 ? Math.max(most, p[1]) : most), 0);
    const top = Math.max(100, Math.ceil((highest + 3) / 10) * 10);
    if (blockedAt === undefined) return { from: newest - ROLLING, to: newest + 1, top, blockedAt };
    const span = Math.max(LEAST_SPAN, newest - blockedAt + 2);
    return { from: blockedAt - BEFORE, to: blockedAt + Math.min(span, 120), top, blockedAt };
  }

  x(seconds, view) {
    return LEFT + ((seconds - view.from) / (view.to - view.from)) * (this.width - LEFT - RIGHT);
  }

  y(kilopascals, view) {
    return this.height - BOTTOM - (kilopascals / view.top) * (this.height - TOP - BOTTOM);
  }

  /** Right of the time limit the curve has to be above the rise line. */
  forbidden(port, view) {
    const { limits } = port;
    if (!limits) return;
    const left = this.x(view.blockedAt + limits.riseSeconds, view);
    const upper = this.y((port.openVacuum ?? 0) + limits.rise, view);
    const c = this.context;
    c.save();
    c.fillStyle = this.pattern();
    c.fillRect(left, upper, this.width - RIGHT - left, this.height - BOTTOM - upper);
    c.restore();
  }

  pattern() {
    if (!this.hatch) {
      const tile = document.createElement("canvas");
      tile.width = tile.height = 10;
      const t = tile.getContext("2d");
      t.strokeStyle = this.colour("--line");
      t.lineWidth = 1.6;
      t.beginPath();
      for (const shift of [-10, 0, 10]) {
        t.moveTo(shift, 10);
        t.lineTo(shift + 10, 0);
      }
      t.stroke();
      this.hatch = this.context.createPattern(tile, "repeat");
    }
    return this.hatch;
  }

  axes(view) {
    const c = this.context;
    c.font = "13px system-ui, 'DejaVu Sans', sans-serif";
    c.fillStyle = this.colour("--soft");
    c.strokeStyle = "#dfe3e6";
    c.lineWidth = 1;
    c.textAlign = "right";
    c.textBaseline = "middle";
    for (let k = 0; k <= view.top; k += 20) {
      this.stroke([[LEFT, this.y(k, view)], [this.width - RIGHT, this.y(k, view)]]);
      c.fillText(number(k, 0), LEFT - 6, this.y(k, view));
    }
    c.fillText("kPa", LEFT - 6, this.y(10, view));
    c.textAlign = "center";
    c.textBaseline = "top";
    const zero = view.blockedAt ?? view.to;
    const step = view.to - view.from > 40 ? 10 : 5;
    for (let s = -20; s <= view.to - zero; s += step) {
      const x = this.x(zero + s, view);
      if (x > LEFT + 8 && x < this.width - RIGHT - 12) c.fillText(`${number(s, 0)} s`, x, this.height - BOTTOM + 6);
    }
  }

  limits(port, view) {
    const { limits } = port;
    if (!limits) return;
    const c = this.context;
    const rise = (port.openVacuum ?? 0) + limits.rise;
    const x = this.x(view.blockedAt + limits.riseSeconds, view);
    const edge = this.width - RIGHT;
    c.strokeStyle = this.colour("--ink");
    c.fillStyle = this.colour("--ink");
    c.lineWidth = 2;
    this.stroke([[this.x(view.blockedAt, view), this.y(0, view)], [this.x(view.blockedAt, view), this.y(view.top, view)]], [2, 5]);
    this.stroke([[this.x(view.blockedAt, view), this.y(rise, view)], [x, this.y(rise, view)]], [9, 5]);
    this.stroke([[x, this.y(rise, view)], [x, this.y(0, view)]]);
    this.stroke([[x, this.y(rise, view)], [edge, this.y(rise, view)]]);
    this.stroke([[x, this.y(limits.maximum, view)], [edge, this.y(limits.maximum, view)]], [14, 4]);
    c.font = "600 14px system-ui, 'DejaVu Sans', sans-serif";
    // Low in the hatched part, where no sound curve passes.
    this.text(say("curve.rise", number(limits.rise, 1)), edge - 3, this.y(0, view) - 44);
    this.text(say("curve.time", limit(limits.riseSeconds)), edge - 3, this.y(0, view) - 26);
    this.text(say("curve.maximum", number(limits.maximum, 1)), edge - 3, this.y(limits.maximum, view) + 4);
  }

  /** Words on a ground of their own, so that the curve behind does not make them illegible. */
  text(words, right, top) {
    const c = this.context;
    const wide = c.measureText(words).width;
    c.save();
    c.globalAlpha = 0.75;
    c.fillStyle = "#fff";
    c.fillRect(right - wide, top - 1, wide, 16);
    c.restore();
    c.textAlign = "right";
    c.textBaseline = "top";
    c.fillText(words, right, top);
  }

  line(points, view) {
    const c = this.context;
    c.save();
    c.beginPath();
    c.rect(LEFT, 0, this.width - LEFT - RIGHT, this.height - BOTTOM + 2);
    c.clip();
    c.strokeStyle = this.colour("--curve");
    c.lineWidth = 3.5;
    c.lineJoin = "round";
    this.stroke(points.filter((p) => p[0] >= view.from - 1).map(([s, k]) => [this.x(s, view), this.y(k, view)]));
    c.restore();
  }

  stroke(path, dash = []) {
    const c = this.context;
    c.setLineDash(dash);
    c.beginPath();
    path.forEach(([x, y], i) => (i ? c.lineTo(x, y) : c.moveTo(x, y)));
    c.stroke();
    c.setLineDash([]);
  }
}
