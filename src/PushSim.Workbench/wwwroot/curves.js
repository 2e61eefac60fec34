// Curves now and before, the ribbon of what limits, and the time slider, all on one axis of time.
import { html, signal, effect, useEffect, useRef } from "./html.js";
import { answer, robots, time, endTime, playing, speed, phone, isOld } from "./store.js";
import { endOf } from "./motion.js";
import { drawPlot } from "./plot.js";
import { useWidth } from "./stage.js";
import { named, seconds, tone } from "./words.js";
import { clamp } from "./scale.js";

const shown = signal("");
const theme = signal(0);
matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => { theme.value++; });
const still = matchMedia("(prefers-reduced-motion: reduce)");

export const seek = t => { time.value = clamp(t, 0, endTime.value); };

let stamp = 0, clock = 0;
effect(() => {
  if (!playing.value) return;
  stamp = 0;
  clock = time.peek() >= endTime.peek() - 1e-6 ? 0 : time.peek();
  requestAnimationFrame(tick);
});

function tick(now) {
  if (!playing.value) return;
  if (stamp) clock += (speed.value * (now - stamp)) / 1000;
  stamp = now;
  // who asks for less motion sees ten still pictures a second of the robots' time
  seek(still.matches ? Math.floor(clock * 10) / 10 : clock);
  if (clock >= endTime.value) { playing.value = false; seek(endTime.value); } else requestAnimationFrame(tick);
}

function Plot({ curve, last, left, lines }) {
  const [outer, width] = useWidth(phone.value ? 350 : 700), box = useRef(null), plot = useRef(null), dark = theme.value;
  useEffect(() => {
    plot.current = drawPlot(box.current, { curve, last, width, height: phone.value ? 118 : 146, left, right: 10, onSeek: t => { playing.value = false; seek(t); }, lines });
    const stop = effect(() => plot.current.at(Math.min(time.value, last)));
    return () => { stop(); plot.current.free(); };
  }, [curve, last, width, left, dark]);
  const ends = curve.series.map(s => `${s.name} ends at ${Number((s.y[s.y.length - 1] ?? 0).toPrecision(3))} ${curve.unit}`).join(", ");
  return html`<div ref=${outer} class="plotbox" role="img" aria-label=${`${curve.words} over time: ${ends}. ${lines.map(l => l.words).join(", ")}`}><div ref=${box}></div></div>`;
}

const patterns = { tyres: "url(#p-tyres)", motors: "url(#p-motors)", motor: "url(#p-motors)", battery: "url(#p-battery)", none: "none", "": "none" };

function Ribbon({ ribbon, last }) {
  const list = robots.value.filter(r => ribbon.some(s => s.robot === r.id));
  return html`${list.map(r => html`<span class=${`ribname ${tone(r.id)}`}>${r.name}</span><div class="rib" role="img" aria-label=${`${r.name}: ${ribbon.filter(s => s.robot === r.id).map(s => `${s.words} from ${seconds(s.from)} to ${seconds(s.to)}`).join(", ")}`}>
    <svg width="100%" height="16">${ribbon.filter(s => s.robot === r.id).map(s => html`<rect class="ribpart" x=${`${(100 * s.from) / last}%`} width=${`${(100 * (s.to - s.from)) / last}%`} y=".5" height="15" fill=${patterns[s.limit] ?? "url(#p-other)"} />`)}</svg>
    ${ribbon.filter(s => s.robot === r.id && (s.to - s.from) / last > 0.14).map(s => html`<span class="plate" aria-hidden="true" style=${{ left: `${(50 * (s.from + s.to)) / last}%` }}>${s.words}</span>`)}</div><span></span>`)}`;
}

export function Curves() {
  const a = answer.value, list = a.curves || [], curve = list.find(c => c.key === shown.value) || list[0];
  const end = endTime.value, last = Math.max(end, endOf(a.before_replay), 1e-3), left = phone.value ? 58 : 84, t = time.value;
  const lines = curve && curve.lines ? curve.lines : curve && curve.key === "ground" ? (a.lines || []).map(l => ({ ...l, y: l.y ?? l.x_m })) : [];
  const keys = e => {
    const jump = { Home: 0, End: end, PageUp: t + 0.1 * end, PageDown: t - 0.1 * end }[e.key];
    if (jump !== undefined) { e.preventDefault(); playing.value = false; seek(jump); }
  };
  return html`<div class=${`curves ${isOld.value ? "old" : ""}`} style=${{ "--left": `${left}px` }}>
    ${curve && html`<div class="curvehead">${list.length > 1 ? html`<label class="curvepick"><span class="vh">Curve</span><select class="f pick" value=${curve.key} onChange=${e => { shown.value = e.target.value; }}>${list.map(c => html`<option value=${c.key}>${c.words}</option>`)}</select> ${curve.unit}</label>` : html`<h3>${curve.words}${curve.unit ? `, ${curve.unit}` : ""}</h3>`}
      <p class="keyline">${curve.series.map(s => html`<span><i class=${`sw ${s.robot === "a" ? "sa" : s.robot === "b" ? "sb" : "si"}`}></i>${named(s.name, robots.value)}</span>`)}${(curve.before || []).length > 0 && html`<span><i class="sw sg"></i>before</span>`}${lines.map(l => html`<span><i class=${`sw ${l.robot === "b" ? "sb" : "sa"}`}></i><span class="lineword">${named(l.words || "", robots.value)}</span></span>`)}</p></div>
    <${Plot} curve=${curve} last=${last} left=${left} lines=${lines} />`}
    <div class="axis">${(a.ribbon || []).length > 0 && html`<${Ribbon} ribbon=${a.ribbon} last=${last} />`}
      <button class="main playbtn" onClick=${() => { playing.value = !playing.value; }}>${playing.value ? "Stop" : "Play"}</button>
      <input class="time" type="range" min="0" max="1000" step="1" value=${Math.round((1000 * t) / last)} aria-label="moment" aria-valuetext=${`${seconds(t)} of ${seconds(end)}`}
        onInput=${e => { playing.value = false; seek((Number(e.target.value) / 1000) * last); }} onKeyDown=${keys} /><span></span>
      <span class="clock">${seconds(t)}</span><div class="speeds" role="group" aria-label="speed of the replay">${[[1, "as it is"], [0.5, "half speed"], [0.1, "a tenth"]].map(([s, w]) => html`<button class="linkbtn" aria-pressed=${speed.value === s ? "true" : "false"} onClick=${() => { speed.value = s; }}>${w}</button>`)}</div></div></div>`;
}
