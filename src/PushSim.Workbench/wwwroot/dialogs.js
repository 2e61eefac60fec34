// Two versions of a file side by side, and a file's text at a line.
import { html, signal, useEffect, useRef } from "./html.js";
import { conflict, save, reload } from "./store.js";
import { fileName } from "./words.js";

export const source = signal(null);

function Dialog({ label, onClose, children }) {
  const ref = useRef(null);
  useEffect(() => { if (ref.current && !ref.current.open) ref.current.showModal(); }, []);
  return html`<dialog ref=${ref} aria-label=${label} onCancel=${e => { e.preventDefault(); onClose(); }}>${children}</dialog>`;
}

// lines that the other text has not are marked by a sign and a word, not by colour
function Lines({ text, other, name }) {
  const theirs = new Set((other || "").split(/\r?\n/));
  return html`<pre class="lines" tabindex="0" role="region" aria-label=${name}>${(text || "").split(/\r?\n/).map(l => html`<span class=${theirs.has(l) ? "" : "diff"}>${theirs.has(l) ? "  " : "> "}${l}${"\n"}</span>`)}</pre>`;
}

function Source() {
  const s = source.value, at = useRef(null);
  useEffect(() => { at.current?.scrollIntoView({ block: "center" }); }, [s]);
  return html`<${Dialog} label=${`Text of ${fileName(s.file)}`} onClose=${() => { source.value = null; }}>
    <h2>${fileName(s.file)}, line ${s.line}</h2>
    <pre class="lines" tabindex="0" role="region" aria-label="text of the file">${s.text.split(/\r?\n/).map((l, i) => html`<span ref=${i + 1 === s.line ? at : null} class=${i + 1 === s.line ? "diff" : ""}>${String(i + 1).padStart(4)}${i + 1 === s.line ? " > " : "   "}${l}${"\n"}</span>`)}</pre>
    <p><button class="main" onClick=${() => { source.value = null; }}>Close</button></p></${Dialog}>`;
}

export function Conflict() {
  const c = conflict.value;
  if (source.value) return html`<${Source} />`;
  if (!c) return null;
  return html`<${Dialog} label="Both versions changed" onClose=${() => { conflict.value = null; }}>
    <h2>${fileName(c.file)} was changed outside, and here too</h2>
    <p>Lines that differ start with “>”. Nothing is written before you choose.</p>
    <div class="both"><div><h3>Here</h3><${Lines} text=${c.mine} other=${c.theirs} name="the version here" /></div>
      <div><h3>In the file</h3><${Lines} text=${c.theirs} other=${c.mine} name="the version in the file" /></div></div>
    <p class="choices"><button class="main" onClick=${() => save(true)}>Write mine over the file</button><button onClick=${reload}>Take the file’s, drop mine</button><button onClick=${() => { conflict.value = null; }}>Decide later</button></p></${Dialog}>`;
}
