// Both views of the run at one moment, on one scale of the floor: side view over top view, the design before as an outline.
import { html, useLayoutEffect, useRef, useSignal, computed } from "./html.js";
import { answer, time, endTime, phone } from "./store.js";
import { MM, poses, reach, tallest, gone, bounds, eventAt, endOf, meanX, squares, squareWords, fromAbove, fromSide, facing } from "./motion.js";

const world = computed(() => {
  const a = answer.value;
  if (!a || !a.replay) return null;
  const all = [a.replay, ...(a.before_replay ? [a.before_replay] : [])];
  return { now: a.replay, before: a.before_replay || null, box: bounds(all), size: Math.max(...a.replay.robots.map(reach)), tall: Math.max(...all.map(tallest)) };
});

export function useWidth(first) {
  const ref = useRef(null), width = useSignal(first);
  useLayoutEffect(() => {
    const seen = new ResizeObserver(([e]) => { const w = Math.round(e.contentRect.width); if (w > 0) width.value = w; });
    seen.observe(ref.current);
    return () => seen.disconnect();
  }, []);
  return [ref, width.value];
}

const short = name => (name.length > 14 ? name.slice(0, 13) + "…" : name);
const degrees = r => (r * 180) / Math.PI;

function Top({ r, p, k, v, ghost }) {
  const shape = fromAbove(r, v.scale, -1, 8);
  return html`<g class=${ghost ? `ghost g${k}` : `bot b${k}`} transform=${`translate(${v.x(p.x).toFixed(1)} ${v.y(p.y).toFixed(1)}) rotate(${(-degrees(p.heading)).toFixed(2)})`}>
    ${!ghost && shape.wheels.map(w => html`<rect class="wheel" ...${w} />`)}
    <polygon class="body" points=${shape.body} />
    ${shape.length > 60 && html`<path class="chev" d=${shape.arrow} />`}</g>`;
}

function Side({ r, p, k, v, ghost, alone }) {
  const shape = fromSide(r, v.scale, -1), up = (r.com * MM + p.heave) * v.scale;
  return html`<g class=${ghost ? `ghost g${k}` : `bot b${k}`} transform=${`translate(${v.x(p.x).toFixed(1)} ${(v.ground - up).toFixed(1)}) scale(${facing(p, alone).toFixed(4)} 1) rotate(${degrees(p.pitch).toFixed(2)})`}>
    <polygon class="body" points=${shape.body} />
    ${!ghost && shape.wheels.map(w => html`<circle class="wheel" ...${w} />`)}</g>`;
}

// scale and place of everything for a width in px
function layout(w, width, t) {
  const height = phone.value ? 109 : 189, ground = phone.value ? 38 : 62, top = ground + 4;
  const far = w.box.right - w.box.left > 14 * w.size;
  const wide = far ? 7 * w.size : w.box.right - w.box.left;
  const scale = Math.min(width / wide, (height - top - (phone.value ? 4 : 6)) / Math.max(2 * w.size, Math.min(w.box.high - w.box.low, 4 * w.size)), (ground - (phone.value ? 18 : 24)) / w.tall);
  const now = poses(w.now, t);
  const middle = far ? meanX(now) : (w.box.left + w.box.right) / 2;
  const tallBox = (w.box.high - w.box.low) * scale > height - top;
  const level = tallBox ? now.reduce((s, p) => s + p.y, 0) / now.length : (w.box.low + w.box.high) / 2;
  return { width, height, ground, top, scale, now, x: x => width / 2 + (x - middle) * scale, y: y => (top + height) / 2 - (y - level) * scale };
}

function Floor({ w, v }) {
  const raster = squares(Math.max(10, 14 / v.scale));
  const first = Math.ceil((-v.x(0) / v.scale) / raster), last = Math.floor(((v.width - v.x(0)) / v.scale) / raster);
  const lines = [];
  for (let i = first; i <= last && lines.length < 200; i++) lines.push(i * raster);
  const corners = p => p.map(c => `${v.x(c[0] * MM).toFixed(1)},${v.y(c[1] * MM).toFixed(1)}`).join(" ");
  return html`<rect class="floor" width=${v.width} height=${v.height} />
    ${lines.map(x => html`<line class="grid" x1=${v.x(x)} x2=${v.x(x)} y1=${v.top} y2=${v.height} />`)}
    <line class="ground" x1="0" x2=${v.width} y1=${v.ground} y2=${v.ground} />
    ${(w.now.patches || []).map(p => html`<polygon class="patch" points=${corners(p)} />`)}
    ${(w.now.walls || []).map(p => html`<polygon class="wall" points=${corners(p)} />`)}
    ${(w.now.lines || []).map((x, k) => html`<line class=${`fin r${k}`} x1=${v.x(x * MM)} x2=${v.x(x * MM)} y1="0" y2=${v.height} />`)}
    ${!phone.value && html`<text class="cap" x="6" y="14">seen from the side</text><text class="cap" x="6" y=${v.ground + 17}>from above; squares: ${squareWords(raster)}</text>`}`;
}

// over the robots, which may stand on them
const LineNames = ({ w, v }) => (w.now.lines || []).map((x, k) => html`<text class=${`linename lab${k}`} x=${v.x(x * MM) + (x > 0 ? -5 : 5)} y=${v.height - 6} text-anchor=${x > 0 ? "end" : "start"}>${short((w.now.robots[k] || {}).name || "")}’s line</text>`);

export function Stage() {
  const [ref, width] = useWidth(phone.value ? 366 : 726);
  const w = world.value, t = time.value;
  if (!w) return html`<div ref=${ref} class="stagebox"></div>`;
  const v = layout(w, width, t), past = w.before && poses(w.before, t), way = gone(w.now, t), start = v.x(way.from), moved = (way.to - way.from) / 1000;
  const ends = t >= endTime.value - 1e-6, event = eventAt(w.now, t), last = ends ? w.now.events[w.now.events.length - 1] : event;
  const winner = ends && last ? w.now.robots.findIndex(r => last.words === `${r.name} wins`) : -1;
  const xs = v.now.map(p => v.x(p.x)), half = w.size * v.scale, tail = moved > 0 ? Math.min(...xs) - half - 8 : Math.max(...xs) + half + 8;
  const length = tail - start, dir = Math.sign(length), far = Math.abs(length) > 46 && Math.sign(moved) === dir && w.now.robots.length > 1;
  const cy = v.y(v.now[0].y), before = past && { x: moved > 0 ? Math.max(...past.map(p => v.x(p.x))) + half + 4 : Math.min(...past.map(p => v.x(p.x))) - half - 4, room: moved > 0 ? "start" : "end" };
  const apart = past && Math.max(...past.map((p, k) => (v.now[k] ? Math.abs(v.x(p.x) - v.x(v.now[k].x)) : 0))) > 2.2 * half;
  const fits = name => name.length * 6.6 < 1.35 * half;
  return html`<div ref=${ref} class="stagebox"><svg class="stage" width=${v.width} height=${v.height} viewBox=${`0 0 ${v.width} ${v.height}`} role="img" aria-label=${`${w.now.end || answer.value.sentence} ${answer.value.before_sentence || ""}`}>
    <${Floor} w=${w} v=${v} />
    ${w.now.robots.length > 1 && html`<line class="start" x1=${start} x2=${start} y1=${v.top} y2=${v.height} />`}
    ${past && w.before.robots.map((r, k) => html`<${Top} r=${r} p=${past[k]} k=${k} v=${v} ghost=${true} /><${Side} r=${r} p=${past[k]} k=${k} v=${v} ghost=${true} alone=${past.length === 1} />`)}
    ${w.now.robots.map((r, k) => html`<${Top} r=${r} p=${v.now[k]} k=${k} v=${v} /><${Side} r=${r} p=${v.now[k]} k=${k} v=${v} alone=${v.now.length === 1} />`)}
    ${w.now.robots.map((r, k) => html`<text class=${`nm lab${k}`} text-anchor="middle" x=${xs[k]} y=${fits(short(r.name)) ? v.y(v.now[k].y) + 4 : v.y(v.now[k].y) + (k === 0 ? -0.72 : 0.95) * half}>${short(r.name)}</text>`)}
    <${LineNames} w=${w} v=${v} />
    ${far && html`<path class="arrow" d=${`M${start + 8 * dir} ${cy}H${tail - 9 * dir}`} /><path class="ahead" d=${`M${tail - 9 * dir} ${cy - 5}l${9 * dir} 5l${-9 * dir} 5z`} /><text x=${(start + tail) / 2} y=${cy - 8} text-anchor="middle">pushed ${Math.abs(moved).toFixed(2)} m</text>`}
    ${apart && html`<text class="cap" x=${before.x} y=${cy + 4} text-anchor=${before.room}>${v.width < 600 || t < endOf(w.before) ? "before" : w.before.robots.length > 1 ? "before: both ended here" : "before: ended here"}</text>`}
    ${last && html`<text class=${winner >= 0 ? `verdict lab${winner}` : "verdict"} x=${v.width / 2} y=${phone.value ? 14 : 18} text-anchor="middle">${last.words.length > 46 ? last.words.slice(0, 45) + "…" : last.words}${ends && winner >= 0 ? ` at ${endTime.value.toFixed(2)} s` : ""}</text>`}
  </svg></div>`;
}

