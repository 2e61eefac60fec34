// The page: start or workbench, with what is told above both.
import { html, render, useEffect } from "./html.js";
import { view, link, notice, spoken, phone, outside, listen, refresh, showStart, say, state, act, save } from "./store.js";
import { flush } from "./sender.js";
import { Start } from "./start.js";
import { Work } from "./work.js";
import { fileName } from "./words.js";
import { Conflict } from "./dialogs.js";

function Told() {
  const n = notice.value, o = outside.value;
  return html`<div class="told" role="status">
    ${link.value === "ended" && html`<p class="tell bad">This page belongs to a PushSim that has ended. <span>Open the address that <code>pushsim open</code> prints.</span></p>`}
    ${link.value === "lost" && html`<p class="tell bad">The connection to PushSim is lost. What you see is kept; the page tries again. <span>If the window with <code>pushsim open</code> is closed, start it again.</span></p>`}
    ${o && html`<p class="tell">${o.what === "gone" ? `${fileName(o.file)} is no longer there. Save writes it anew.` : `${fileName(o.file)} was changed outside and is read again.`} <button onClick=${() => { outside.value = null; }}>Close</button></p>`}
    ${n && html`<p class=${n.bad ? "tell bad" : "tell"}>${n.message} ${n.help && html`<span>${n.help}</span>`} ${n.url && html`<a href=${n.url} target="_blank" rel="noopener">Show it</a>`} <button onClick=${() => { notice.value = null; }}>Close</button></p>`}
  </div>`;
}

function App() {
  useEffect(() => {
    const narrow = matchMedia("(max-width: 900px)");
    const set = () => { phone.value = narrow.matches; };
    set();
    narrow.addEventListener("change", set);
    addEventListener("keydown", keys);
  }, []);
  return html`
    <p class="vh" role="status" aria-live="polite" id="spoken">${spoken.value}</p>
    ${view.value === "work" && state.value ? html`<${Work} told=${html`<${Told} />`} />` : view.value === "start" ? html`<${Start} told=${html`<${Told} />`} />` : html`<main><h1 class="wait">PushSim starts.</h1><${Told} /></main>`}
    <${Conflict} />`;
}

function keys(e) {
  if (!(e.ctrlKey || e.metaKey) || e.altKey || view.value !== "work") return;
  const typing = e.target.matches && e.target.matches("input:not([type=range]), textarea");
  const key = e.key.toLowerCase();
  if (key === "s") { e.preventDefault(); save(); }
  else if (typing) return;
  else if (key === "z") { e.preventDefault(); act(e.shiftKey ? "/api/redo" : "/api/undo"); }
  else if (key === "y") { e.preventDefault(); act("/api/redo"); }
}

render(html`<${App} />`, document.getElementById("root"));
listen(flush);
refresh().then(() => { if (view.value === "start") showStart(); }, say);
