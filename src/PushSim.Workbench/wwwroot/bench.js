// The bench: a log, pasted readings or a load cell; pulls, what they say of the tyre, and the notebook.
import { html, signal, useEffect, useRef } from "./html.js";
import { trace, act, say, tell, phone } from "./store.js";
import { get, post, postText } from "./api.js";
import { drawPlot } from "./plot.js";
import { useWidth } from "./stage.js";
import { plain } from "./scale.js";
import { count, fileName } from "./words.js";

const MOST = 4 * 1024 * 1024;
// a part that this PushSim has not is not shown: false
const card = signal(null), book = signal(null), ports = signal(null), port = signal(""), baud = signal("115200"), unit = signal(""), tyre = signal(""), known = signal(""), floor = signal(""), state = signal(""), over = signal(false), pasted = signal("");

async function drop(file) {
  if (!file) return;
  if (file.size > MOST) { say({ message: `${file.name} has ${(file.size / 1048576).toFixed(1)} MB; 4 MB is the most.`, help: "Shorten the log, or use pushsim fit." }); return; }
  try {
    card.value = await postText(`/api/log?name=${encodeURIComponent(file.name)}`, await file.text());
    readBook();
  } catch (e) { say(e); }
}

async function find() {
  try {
    ports.value = (await get("/api/ports")).ports;
    if (!port.value && ports.value.length) port.value = ports.value[0];
  } catch (e) { if (e.status === 404) ports.value = false; else say(e); }
}

async function readBook() {
  try { book.value = await get("/api/readings"); } catch (e) { if (e.status === 404) book.value = false; else say(e); }
}

async function paste(e) {
  e.preventDefault();
  const text = pasted.value.trim();
  if (!text) return;
  try {
    const done = await post("/api/reading", { text });
    tell(`${count(done.added ?? 1, "reading", "readings")} added to the notebook.`);
    pasted.value = "";
    if (done.readings) book.value = done.readings; else readBook();
  } catch (x) { say(x); }
}

const use = async t => { if (await act("/api/use", { key: t.key, value: t.value })) tell(`${t.words || t.name}: ${t.value} is in the robot now.`); };

function Curve({ name, t, f, unit, pulls }) {
  const [outer, width] = useWidth(460), box = useRef(null);
  const last = t.length ? Math.max(t[t.length - 1], 1e-3) : 1;
  useEffect(() => {
    const p = drawPlot(box.current, { curve: { unit, series: [{ name, robot: null, t, y: f }], before: [], breaks: true }, last, width, height: 130, left: 52, right: 8, onSeek() {}, lines: [] });
    return () => p.free();
  }, [t, f, width]);
  return html`<p class="axisname">Force in ${unit}, over seconds${name && name !== "force" ? `: ${name}` : ""}${(pulls || []).length > 0 ? "; numbers below it: pulls" : ""}</p><div ref=${outer} class="plotbox trace" role="img" aria-label=${`${name}: ${count((pulls || []).length, "pull", "pulls")} found`}><div ref=${box}></div>
    <div class="pullmarks" aria-hidden="true">${(pulls || []).filter(p => p.to > p.from).map((p, i) => html`<span style=${{ left: `calc(52px + (100% - 60px) * ${p.from / last})`, width: `calc((100% - 60px) * ${(p.to - p.from) / last})` }}>${p.n ?? i + 1}</span>`)}</div></div>`;
}

// pulls of a log as lines for the notebook, to be looked through before they are added
const handOver = c => {
  pasted.value = c.pulls.filter(p => !p.left_out).map(p => `${(c.curves[p.curve] || {}).name || tyre.value}, , ${plain(p.peak)} N, ${p.sliding === null ? "" : `${plain(p.sliding)} N`}`).join("\n");
  const box = document.getElementById("paste");
  if (box) { box.scrollIntoView({ block: "center" }); box.focus(); }
};

const verdicts = { tyre: "the tyre let go", motor: "the motor stalled", unclear: "not clear which" };

const curves = c => (c.curves && c.curves.length ? c.curves : c.curve && c.curve.t ? [c.curve] : []);
const force = f => (typeof f === "number" ? `${plain(f)} N` : f ?? "");

function Fit() {
  const c = card.value;
  if (!c) return null;
  return html`<section class="benchcard" aria-label="what the log says"><h3>${c.sentence}</h3>
    ${[c.reason, c.sure, c.next, ...(c.notes || [])].filter(Boolean).map(w => html`<p>${w}</p>`)}
    ${curves(c).map((k, i) => html`<${Curve} key=${i} name=${k.name || "force"} t=${k.t} f=${k.f} unit=${k.unit || "N"} pulls=${(c.pulls || []).map((p, n) => ({ ...p, n: n + 1 })).filter(p => (p.curve ?? 0) === i)} />`)}
    ${(c.tyres || []).map(t => html`<p class="fitrow"><span>${t.words || t.name}: <b>${t.value}</b></span>${t.key ? html`<button class="main" onClick=${() => use(t)}>Use this value</button>` : html`<span class="soft">this robot has no such tyre</span>`}</p>`)}
    ${(c.pulls || []).length > 0 && html`<div class="scroll" tabindex="0" role="region" aria-label="pulls"><table><thead><tr><th scope="col">Pull</th><th scope="col">Peak</th><th scope="col">Sliding</th><th scope="col">Tyre or motor?</th></tr></thead><tbody>${c.pulls.map((p, i) => html`<tr><th scope="row">${i + 1}</th><td>${force(p.peak)}</td><td>${force(p.sliding)}</td><td>${p.left_out ? `left out: ${p.why}` : verdicts[p.verdict] || p.verdict || ""}</td></tr>`)}</tbody></table></div>`}
    ${book.value && book.value.file && (c.pulls || []).some(p => !p.left_out) && html`<p><button onClick=${() => handOver(c)}>Write these pulls below, for the notebook</button></p>`}
    ${c.block && html`<details><summary>Lines for the file</summary><pre class="lines" tabindex="0" role="region" aria-label="lines for the file">${c.block}</pre></details>`}</section>`;
}

function Cell() {
  const t = trace.value;
  useEffect(() => { if (t && t.noted) readBook(); }, [t && t.noted]);
  if (!ports.value) return null;
  const on = t && t.listening !== false;
  const listen = async () => { if (await act("/api/port", { name: port.value, baud: Number(baud.value), unit: unit.value, tyre: tyre.value.trim(), known: known.value.trim(), floor: floor.value.trim(), state: state.value.trim() })) tell(`Listening to ${port.value}.`); };
  return html`<section class="benchcard"><h3>Load cell on a serial port</h3>
    <p class="soft">Every line goes to a raw log at once. Good pulls go into the notebook if you name the tyre.</p>
    ${ports.value.length === 0 ? html`<p class="soft">No serial port is there. <button class="linkbtn" onClick=${find}>Look again</button></p>`
      : html`<p class="fitrow"><label>Port <select class="f pick" value=${port.value} onChange=${e => { port.value = e.target.value; }}>${ports.value.map(p => html`<option value=${p}>${p}</option>`)}</select></label>
        <label>Baud <input class="f baud" inputmode="numeric" value=${baud.value} onInput=${e => { baud.value = e.target.value; }} /></label>
        <label>Unit <select class="f pick" value=${unit.value} onChange=${e => { unit.value = e.target.value; }}><option value="">as the lines say</option>${["N", "gf", "kgf", "lbf", "ozf"].map(u => html`<option value=${u}>${u}</option>`)}</select></label>
        <label>Known mass <input class="f baud" placeholder="none" title="scales the cell: put it on after the tare, for example 200 g" value=${known.value} onInput=${e => { known.value = e.target.value; }} /></label>
        ${book.value && book.value.file && html`<label>Tyre <input class="f baud" placeholder="not noted" value=${tyre.value} onInput=${e => { tyre.value = e.target.value; }} /></label>
        <label>Floor <input class="f baud" placeholder="any" value=${floor.value} onInput=${e => { floor.value = e.target.value; }} /></label>
        <label>Its state <input class="f baud" placeholder="wiped" value=${state.value} onInput=${e => { state.value = e.target.value; }} /></label>`}
        <button class="main" onClick=${listen}>Listen</button>${on && html`<button onClick=${() => act("/api/tare")}>Tare anew</button><button onClick=${() => act("/api/port", { name: null })}>Stop</button>`}</p>`}
    ${t && html`${t.caution && html`<p class="soft">${t.caution}</p>`}<p aria-live="polite">${t.words || count((t.pulls || []).length, "pull", "pulls")}</p>${t.t.length > 1 && html`<${Curve} name="load cell" t=${t.t} f=${t.f} unit=${t.unit || "N"} pulls=${t.pulls} />`}${t.log && html`<p class="soft rawlog">Raw log: ${t.log}</p>`}`}</section>`;
}

function Notebook() {
  const b = book.value, rows = b ? b.rows || [] : [];
  return html`<section class="benchcard"><h3>Notebook</h3>
    ${!b || !b.file ? html`<p class="soft">No garage here, so there is no notebook. Make one: pushsim garage new.</p>` : html`
    <p class="soft">${fileName(b.file)}: ${count(rows.length, "pull", "pulls")}</p>
    ${b.season && html`<div class="season"><p><b>${b.season.sentence}</b></p>${[b.season.changed, b.season.sure, b.season.next && `Next: ${b.season.next}`].filter(Boolean).map(w => html`<p class="soft">${w}</p>`)}
      <div class="scroll" tabindex="0" role="region" aria-label="tyres side by side"><table><thead><tr><th scope="col">Tyre, floor</th><th scope="col">Grip</th><th scope="col">Of</th><th scope="col">95 % range</th></tr></thead>
      <tbody>${b.season.tyres.map(t => html`<tr><th scope="row">${t.name}</th><td>${t.value}</td><td>${t.of}</td><td>${t.range}</td></tr>`)}</tbody></table></div></div>`}
    ${(b.trend || []).map(w => html`<p>${w}</p>`)}
    ${rows.length > 0 && html`<div class="scroll" tabindex="0" role="region" aria-label="notebook"><table><thead><tr><th scope="col">Date</th><th scope="col">Tyre</th><th scope="col">Floor</th><th scope="col">Load</th><th scope="col">Peak</th><th scope="col">Sliding</th><th scope="col">Note</th></tr></thead>
      <tbody>${[...rows].reverse().slice(0, 40).map(r => html`<tr class=${r.left_out ? "leftout" : ""}><th scope="row">${r.date}</th><td>${r.tyre}</td><td>${r.floor}</td><td>${r.load}</td><td>${r.peak}</td><td>${r.sliding}</td><td>${r.left_out ? `left out: ${r.why || r.note}` : r.note}</td></tr>`)}</tbody></table></div>`}`}</section>`;
}

export function Bench() {
  const input = useRef(null);
  useEffect(() => { readBook(); find(); }, []);
  const take = e => { e.preventDefault(); over.value = false; drop(e.dataTransfer.files[0]); };
  return html`<div class="bench" onDragOver=${e => { e.preventDefault(); over.value = true; }} onDragLeave=${() => { over.value = false; }} onDrop=${take}><h2 class="vh">Bench</h2>
    <section class=${`benchcard drop ${over.value ? "over" : ""}`}><h3>A log of pulls</h3><p class="soft">${phone.value ? "Choose" : "Drop a CSV file here, or choose"} one: time and force, as the load cell wrote it.</p>
      <button class="main" onClick=${() => input.current.click()}>Choose a log</button>
      <input ref=${input} class="vh" type="file" accept=".csv,.txt,text/csv,text/plain" aria-label="log file" tabindex="-1" onChange=${e => { drop(e.target.files[0]); e.target.value = ""; }} /></section>
    <${Fit} />
    ${book.value !== false && html`<section class="benchcard"><form onSubmit=${paste}><h3><label for="paste">Readings by hand</label></h3>
      <p class="soft" id="paste-why">One pull a line: tyre, load, peak, sliding, note. For example: soft, 1360 g, 11.2 N, 9.8 N</p>
      <textarea id="paste" class="f area" rows="3" aria-describedby="paste-why" spellcheck="false" value=${pasted.value} onInput=${e => { pasted.value = e.target.value; }}></textarea>
      <button type="submit">Add to the notebook</button></form></section>`}
    <${Cell} />${book.value !== false && html`<${Notebook} />`}</div>`;
}
