// The workbench: the robot's shape at the left, its answer at the right; on a phone one column with the answer held at the top.
import { html } from "./html.js";
import { state, answer, robots, tab, part, phone, rows, act, save, makePage, showStart, odds, strips } from "./store.js";
import { count, fileName, tone } from "./words.js";
import { Drawing } from "./drawing.js";
import { Rows } from "./row.js";
import { Card, Numbers } from "./answer.js";
import { Sure } from "./odds.js";
import { Stage } from "./stage.js";
import { Curves } from "./curves.js";
import { Bench } from "./bench.js";

const unsaved = s => s.unsaved ?? (s.changes ? s.changes.length : 0);

const hasPin = s => Boolean(s.pinned);

function Top() {
  const s = state.value, n = unsaved(s);
  return html`<header class="top"><h1><button class="homebtn" onClick=${showStart} title="All files of this folder">PushSim</button></h1>
    <span class="file" title=${s.file}>${fileName(s.file)}: ${n === 0 ? "as saved" : `${count(n, "change", "changes")} not saved`}</span>
    <button class="d" disabled=${!s.undo} onClick=${() => act("/api/undo")}>Undo${s.undo ? `: ${s.undo.words}` : ""}</button>
    <button class="d" disabled=${!s.redo} onClick=${() => act("/api/redo")}>Redo</button>
    <${Pin} class="d" />
    <button class="d" onClick=${makePage}>Make a page</button>
    <button class="main d" onClick=${() => save()}>Save to the file</button></header>`;
}

function Pin(props) {
  const on = hasPin(state.value);
  return html`<button class=${props.class} aria-pressed=${on ? "true" : "false"} title=${on ? `Compared with: ${state.value.pinned.words}` : ""} onClick=${() => act(on ? "/api/unpin" : "/api/pin")}>${on ? "End of comparing" : "Compare from here"}</button>`;
}

function Bottom() {
  const s = state.value, on = s.mode === "odds";
  return html`<nav class="bottom" aria-label="steps"><button disabled=${!s.undo} onClick=${() => act("/api/undo")}>Undo</button>
    <${Pin} />
    <button aria-pressed=${on ? "true" : "false"} onClick=${() => { act("/api/mode", { mode: on ? "match" : "odds" }); document.querySelector(".sure")?.scrollIntoView({ block: "center" }); }}>How sure</button>
    <button class="main" onClick=${() => save()}>Save to the file</button></nav>`;
}

const toggleAll = () => { part.value = part.value === "*" ? "" : "*"; };

function Who() {
  const list = [...robots.value.map(r => ({ id: r.id, words: r.yours && robots.value.length > 1 ? `${r.name} (yours)` : r.name, tone: tone(r.id) }))];
  if (state.value.scene_parts && state.value.scene_parts.length) list.push({ id: "scene", words: "floor and match" });
  list.push({ id: "bench", words: "bench" });
  const choose = id => { tab.value = id; part.value = ""; };
  return html`<nav class="who" aria-label="whose values">${list.map(t => html`<button key=${t.id} class=${`whobtn ${t.tone || ""}`} aria-current=${tab.value === t.id ? "true" : null} onClick=${() => choose(t.id)}>${t.words}</button>`)}
    ${tab.value !== "bench" && html`<button class="all" aria-pressed=${part.value === "*" ? "true" : "false"} onClick=${toggleAll}>${part.value === "*" ? "what matters most" : "all values"}</button>`}</nav>`;
}

function ModeSwitch() {
  const s = state.value, is = s.mode === "odds";
  if (robots.value.length < 2 && !is) return null;
  return html`<span class="switch" role="group" aria-label="what strips show">Strips:
    <button aria-pressed=${is ? "false" : "true"} onClick=${() => act("/api/mode", { mode: "match" })}>one match</button>
    <button aria-pressed=${is ? "true" : "false"} onClick=${() => act("/api/mode", { mode: "odds" })}>wins of 100</button></span>`;
}

// rows to show: what matters most, one part, or all
function chosen() {
  const s = state.value, robot = robots.value.find(r => r.id === tab.value);
  const parts = tab.value === "scene" ? s.scene_parts || [] : robot ? robot.parts : [];
  if (part.value === "*") return { title: tab.value === "scene" ? "All values of floor and match" : `All values of ${robot.name}`, groups: parts };
  const one = parts.find(p => p.id === part.value);
  if (one) return { title: one.words, groups: [{ ...one, words: "" }] };
  const best = (s.matters || []).map(k => rows.value[k]).filter(r => r && r.robot === tab.value).slice(0, 5).map(r => r.row);
  if (best.length) return { title: "What matters most here", groups: [{ id: "best", words: "", rows: best }] };
  // before that is known: the first value of every part
  return { title: tab.value === "scene" ? "Floor and match" : "First values", groups: [{ id: "first", words: "", rows: parts.filter(p => p.rows.length).map(p => p.rows[0]) }] };
}

function Shape() {
  const robot = robots.value.find(r => r.id === tab.value), c = chosen(), isOdds = state.value.mode === "odds", yours = robots.value.find(r => r.yours) || robots.value[0];
  return html`<div class="shape"><${Who} />
    ${tab.value === "bench" ? html`<${Bench} />` : html`
    ${robot && robot.drawing && html`<${Drawing} robot=${robot} />`}
    ${tab.value === "scene" && html`<div class="sceneparts">${(state.value.scene_parts || []).map(p => html`<button key=${p.id} class="partbtn" aria-pressed=${part.value === p.id ? "true" : "false"} onClick=${() => { part.value = part.value === p.id ? "" : p.id; }}>${p.words}</button>`)}</div>`}
    <div class="sort"><h2>${c.title}</h2>${!part.value && robots.value.length > 1 && html`<button class="linkbtn" title="those first whose flip lies closest to the value, measured in its tolerance" onClick=${() => act("/api/matters")}>sort</button>`}${part.value && part.value !== "*" && html`<button class="linkbtn" onClick=${() => { part.value = ""; }}>What matters most</button>`}<${ModeSwitch} /></div>
    ${robots.value.length > 1 && html`<p class="legend">${isOdds ? `Solid part: matches ${yours.name} wins. Dotted line: half.` : "Bar height: how fast the loser is pushed back."} Frame: value ± tolerance.${state.value.pinned || state.value.changes.length > 0 ? " Dashed stem: before." : ""}</p>`}
    <${Rows} groups=${c.groups} />
    <button class="linkbtn allbelow" onClick=${toggleAll}>${part.value === "*" ? "What matters most" : `All values of ${robot ? robot.name : "floor and match"}`}</button>`}
  </div>`;
}

export function Work({ told }) {
  const a = answer.value;
  return html`<${Top} /><main class=${`page ${tab.value === "bench" ? "onbench" : ""}`}>
    <${Shape} />
    <div class="ans">${told}
      <${Card} stage=${phone.value && a && a.replay ? html`<${Stage} />` : null} />
      <${Numbers} />
      <${Sure} />
      ${a && a.replay && html`<section class="sc" aria-label="replay and curves">${!phone.value && html`<${Stage} />`}<${Curves} /></section>`}
    </div></main>
    ${phone.value && html`<${Bottom} />`}`;
}
