// A value: words, source, text field with its tolerance, and the slider whose track is the strip.
import { html, useSignal, useEffect, useRef } from "./html.js";
import { local, strips, robots, valuesNumber, rows, say, watch } from "./store.js";
import { change } from "./sender.js";
import { hasSlider, places, share, numberAt, plain, withUnit } from "./scale.js";
import { Strip, outcome } from "./strip.js";
import { fileName } from "./words.js";
import { get } from "./api.js";
import { source } from "./dialogs.js";

const pc = x => `${(100 * x).toFixed(2)}%`;

// "x/ 5": a fifth to five times the value
const markOf = row => (row.tolerance && row.tolerance.mark) || "±";
const joined = (row, text, tolerance) => (tolerance ? `${text} ${markOf(row)} ${tolerance}` : text);
const cut = (row, text) => text.split(` ${markOf(row)} `);
const span = (row, value) => {
  const t = row.tolerance;
  if (!t || !Number.isFinite(t.value)) return null;
  const factor = Number(t.text);
  return t.mark === "x/" ? (factor > 1 ? [value / factor, value * factor] : null) : [value - t.value, value + t.value];
};

function Source({ row }) {
  const s = row.source;
  if (!s) return null;
  const where = `${fileName(s.file)}, line ${s.line}`, told = (s.words || "").includes(`line ${s.line}`);
  const show = async () => { try { source.value = { ...(await get(`/api/text?file=${encodeURIComponent(s.file)}`)), line: s.line }; } catch (e) { say(e); } };
  const at = s.file && s.line > 0 ? html`<button class="linkbtn" onClick=${show}>${told ? s.words : where}</button>` : null;
  const words = at && told ? "" : s.words || "";
  if (s.kind === "changed") return html`<p class="src">${told ? at : html`${words || "changed here"}${at && html`; ${at}`}`}</p>`;
  return html`<p class="src">${at}${at && words ? ": " : ""}${words}</p>`;
}

// a text that is taken over by Enter or by leaving the field
function Text({ id, label, value, bad, wide, describe, onTake }) {
  const draft = useSignal(null), field = useRef(null);
  const take = () => {
    if (draft.value !== null && draft.value.trim() !== value) onTake(draft.value.trim());
    draft.value = null;
  };
  const keys = e => {
    if (e.key === "Enter") take();
    else if (e.key === "Escape" && draft.value !== null) { draft.value = null; e.stopPropagation(); }
  };
  return html`<input ref=${field} id=${id} class=${`f ${wide ? "" : "t"} ${bad ? "badf" : ""}`} value=${draft.value ?? value} aria-label=${label} aria-invalid=${bad ? "true" : null} aria-describedby=${describe}
    autocomplete="off" spellcheck="false" onInput=${e => { draft.value = e.target.value; }} onBlur=${take} onKeyDown=${keys} />`;
}

function Slider({ row, mine, names, tones }) {
  const strip = strips.value[row.key];
  const n = places(row), value = mine && Number.isFinite(mine.value) ? mine.value : row.value, at = share(row, value);
  const held = useRef(false);
  const set = (e, drag) => {
    // a place that is not left keeps the file's own text
    const number = numberAt(row, Number(e.target.value) / n);
    change(row.key, joined(row, withUnit(row, number), row.tolerance && row.tolerance.text), { drag, value: Number(number) });
  };
  const ends = span(row, value), width = ends && ends.map(v => share(row, v));
  const before = strip && Number.isFinite(strip.before_x) ? strip.before_x : Number.isFinite(row.old_value) ? row.old_value : null;
  const was = before !== null && Math.abs(share(row, before) - at) > 0.004 ? share(row, before) : null;
  const words = strip ? strip.words || "" : "";
  const text = mine ? cut(row, mine.text)[0] : row.text;
  const said = [text, outcome(row, strip, value, names), words].filter(Boolean).join("; ");
  return html`<div class="ctl">
    <${Strip} row=${row} strip=${strip} names=${names} tones=${tones} at=${at} stale=${strip && strip.number < valuesNumber.value} />
    ${width && html`<div class="frame" aria-hidden="true" style=${{ left: `min(${pc(width[0])}, calc(${pc((width[0] + width[1]) / 2)} - 7px))`, width: `max(14px, ${pc(width[1] - width[0])})` }}></div>`}
    ${was !== null && html`<div class="was" aria-hidden="true" style=${{ left: pc(was) }}></div>${(at < was || at - was > 0.2) && html`<span class="wasword" aria-hidden="true" style=${was > 0.8 ? { right: `calc(${pc(1 - was)} + 5px)` } : { left: `calc(${pc(was)} + 5px)` }}>before</span>`}`}
    <div class="knob" aria-hidden="true" style=${{ left: pc(at) }}></div>
    <input type="range" min="0" max=${n} step="1" value=${Math.round(at * n)} aria-label=${row.words} aria-valuetext=${said} data-key=${row.key}
      onPointerDown=${() => { held.current = true; }} onInput=${e => set(e, held.current)} onChange=${e => { held.current = false; set(e, false); }} />
  </div>
  <div class="feet"><span>${withUnit(row, plain(row.low))}</span><span class="flip">${words}</span><span>${withUnit(row, plain(row.high))}</span></div>`;
}

export function Row({ item }) {
  const row = item, mine = local.value[row.key], adding = useSignal(false);
  const owner = rows.value[row.key] ? rows.value[row.key].robot : "scene";
  const yours = robots.value.find(r => r.yours) || robots.value[0], other = robots.value.find(r => r !== yours);
  const names = [yours ? yours.name : "", other ? other.name : ""], tones = [yours ? yours.id : "a", other ? other.id : "b"];
  const id = "v-" + row.key.replace(/[^A-Za-z0-9_-]/g, "-"), bad = row.error;
  const shown = mine ? cut(row, mine.text)[0] : bad && bad.text !== undefined && bad.text !== null ? cut(row, bad.text)[0] : row.text;
  const tolerance = mine ? cut(row, mine.text)[1] || "" : row.tolerance ? row.tolerance.text : "";
  const take = text => change(row.key, /±|\+\/-|x\/|×\//.test(text) ? text : joined(row, text, row.tolerance && row.tolerance.text));
  const slider = hasSlider(row);
  const self = useRef(null);
  useEffect(() => watch(self.current, row.key), [row.key]);
  useEffect(() => { if (adding.value) document.getElementById(id + "-tol")?.focus(); });
  const changed = row.changed || (row.source && row.source.kind === "changed");
  return html`<section ref=${self} class=${`row ${changed ? "changed" : ""}`} data-row=${row.key} data-owner=${owner} aria-labelledby=${id + "-h"}>
    <div class="head"><div class="nm"><h3 id=${id + "-h"} title=${row.explain || ""}>${row.words}</h3><${Source} row=${row} /></div>
      ${row.choices
        ? html`<select class="f pick" aria-label=${row.words} value=${shown} onChange=${e => change(row.key, e.target.value)}>${(row.choices.includes(shown) ? row.choices : [shown, ...row.choices]).map(c => html`<option value=${c}>${c}</option>`)}</select>`
        : html`<${Text} id=${id} wide=${true} label=${row.words} value=${shown} bad=${bad} describe=${bad ? id + "-err" : null} onTake=${take} />
          ${slider && (tolerance || adding.value
            ? html`<label class="tol">${markOf(row)} <${Text} id=${id + "-tol"} label=${`tolerance of ${row.words}`} value=${tolerance} onTake=${t => { adding.value = false; change(row.key, joined(row, row.text, t)); }} /></label>`
            : html`<button class="linkbtn addtol" aria-label=${`add a tolerance to ${row.words}`} onClick=${() => { adding.value = true; }}>add ±</button>`)}`}
    </div>
    ${bad && html`<p class="err" id=${id + "-err"} role="alert">${bad.message}${bad.help ? ` ${bad.help}` : ""}</p>`}
    ${slider && html`<${Slider} row=${row} mine=${mine} names=${names} tones=${tones} />`}
  </section>`;
}

export const Rows = ({ groups }) => html`<div class="rows">${groups.map(g => html`<div key=${g.id} class="rowgroup">${g.words && html`<h3 class="grouphead">${g.words}</h3>`}${g.rows.map(r => html`<${Row} key=${r.key} item=${r} />`)}</div>`)}</div>`;
