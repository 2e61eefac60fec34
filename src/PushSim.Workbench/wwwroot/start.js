// The start page: what lies in the folder, the shipped questions, and a robot from what one can measure.
import { html, useSignal } from "./html.js";
import { fileName } from "./words.js";
import { home, open, create, state, view } from "./store.js";

function Card({ card, ship }) {
  return html`<li class="tile"><button class="tilebtn" onClick=${() => open(card.path)}>
    <b>${card.question || card.title || card.name}</b>
    <span>${ship ? `shipped ${card.kind}` : card.path}${card.changed && !ship ? `, changed ${card.changed}` : ""}</span>
  </button></li>`;
}

const Group = ({ title, cards, none, ship }) => html`<section class="group"><h2>${title}</h2>
  ${cards.length ? html`<ul class="tiles">${cards.map(c => html`<${Card} key=${c.path} card=${c} ship=${ship} />`)}</ul>` : html`<p class="soft">${none}</p>`}</section>`;

// a text that is none of the choices: they are proposals
const isFree = row => row.text !== "" && !row.choices.includes(row.text);

function Field({ row, texts, errors }) {
  const id = "new-" + row.key, bad = errors.value[row.key];
  const set = e => { texts.value = { ...texts.value, [row.key]: e.target.value }; };
  const common = { id, class: bad ? "f badf" : "f", "aria-invalid": bad ? "true" : null, "aria-describedby": `${id}-why` };
  return html`<div class="ask"><label for=${id}>${row.words}</label>
    ${row.choices && !isFree(row)
      ? html`<select ...${common} value=${texts.value[row.key]} onChange=${set}>${row.text === "" && html`<option value="">the usual one</option>`}${row.choices.map(c => html`<option value=${c}>${c}</option>`)}</select>`
      : row.choices
      ? html`<input ...${common} list=${id + "-list"} value=${texts.value[row.key]} onInput=${set} autocomplete="off" spellcheck="false" /><datalist id=${id + "-list"}>${row.choices.map(c => html`<option value=${c}></option>`)}</datalist>`
      : html`<input ...${common} value=${texts.value[row.key]} onInput=${set} autocomplete="off" spellcheck="false" />`}
    <p class=${bad ? "err" : "src"} id=${id + "-why"}>${bad ? `${bad.message} ${bad.help || ""}` : row.explain || ""}</p></div>`;
}

function Measure({ rows, open }) {
  const texts = useSignal(Object.fromEntries(rows.map(r => [r.key, r.text])));
  const errors = useSignal({}), said = useSignal("");
  const send = async e => {
    e.preventDefault();
    errors.value = {};
    said.value = "";
    try {
      await create(rows.map(r => ({ key: r.key, text: texts.value[r.key] })).filter(r => r.text !== ""));
    } catch (x) {
      const key = x.body && x.body.key;
      if (key) {
        errors.value = { [key]: { message: x.message, help: x.help } };
        document.getElementById("new-" + key)?.focus();
      } else said.value = `${x.message} ${x.help}`;
    }
  };
  return html`<details class="group measure" open=${open}><summary><h2>My robot from what I can measure</h2></summary>
    <p class="soft">A kitchen scale and a ruler are enough. Leave open what you do not know: the usual value stands in, and says so.</p>
    <form class="asks" onSubmit=${send} novalidate>${rows.map(r => html`<${Field} key=${r.key} row=${r} texts=${texts} errors=${errors} />`)}
      <div class="ask last"><button class="main" type="submit">Make this robot</button>${said.value && html`<p class="err" role="alert">${said.value}</p>`}</div></form></details>`;
}

export function Start({ told }) {
  const h = home.value;
  return html`<header class="top"><h1>PushSim</h1><span class="file">${h ? h.folder : ""}</span>
    ${state.value && html`<button onClick=${() => { view.value = "work"; }}>Back to ${fileName(state.value.file)}</button>`}</header>
    <main class="start">${told}
    ${!h ? html`<p class="wait">The folder is read.</p>` : html`
      ${h.starter && h.starter.length > 0 && html`<${Measure} rows=${h.starter} open=${!h.cards.some(c => c.kind === "robot")} />`}
      <${Group} title="Robots here" cards=${h.cards.filter(c => c.kind === "robot")} none="No robot file in this folder yet." />
      <${Group} title="Questions here" cards=${h.cards.filter(c => c.kind !== "robot")} none="No scenario file in this folder yet." />
      <${Group} title="Shipped questions to look at" cards=${h.shipped || []} none="None." ship=${true} />`}
    </main>`;
}
