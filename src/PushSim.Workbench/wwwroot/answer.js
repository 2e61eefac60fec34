// The answer: one sentence, the old one, the reason, the numbers with what they were before.
import { html } from "./html.js";
import { answer, robots, isOld, faulty } from "./store.js";
import { named } from "./words.js";

function oldWords(a) {
  const row = faulty.value[0];
  if (a.old_words) return `Old answer, ${a.old_words}`;
  if (row) return `Old answer: “${row.error.text ?? row.words}” cannot be used for ${row.words}`;
  return "Old answer";
}

export function Card({ stage }) {
  const a = answer.value;
  if (!a) return html`<section class="card" aria-label="answer"><p class="say soft">${faulty.value.length ? "No answer yet: a value cannot be used." : "The first answer is computed."}</p>${faulty.value.map(r => html`<p class="err">${r.words}: ${r.error.message} ${r.error.help || ""}</p>`)}</section>`;
  return html`<section class=${`card ${isOld.value ? "old" : ""}`} aria-label="answer" data-number=${a.number}>
    ${isOld.value && html`<p class="oldtag">${oldWords(a)}</p>`}
    <h2 class="say">${named(a.sentence, robots.value)}</h2>
    ${a.before_sentence && html`<p class="why">${named(/^before/i.test(a.before_sentence) ? a.before_sentence : `Before: ${a.before_sentence}`, robots.value)}</p>`}
    ${a.reason && html`<p class="why long">${named(a.reason, robots.value)}</p>`}
    ${(a.cautions || []).length > 0 && html`<details class="cautions"><summary>Mind before you act</summary>${a.cautions.map(c => html`<p>${c}</p>`)}</details>`}
    ${stage}</section>`;
}

// ready words of the server, or made from its parts
const text = n => n.text ?? `${n.value}${n.unit ? ` ${n.unit}` : ""}`;
const before = n => n.before_words ?? (n.before !== null && n.before !== undefined ? `before ${n.before}${n.unit ? ` ${n.unit}` : ""}${n.difference_words ? `: ${n.difference_words}` : ""}` : "");

export function Numbers() {
  const a = answer.value;
  if (!a || !a.numbers || a.numbers.length === 0) return null;
  return html`<section class=${`nums ${isOld.value ? "old" : ""}`} aria-label="numbers">${a.numbers.slice(0, 4).map(n => html`<div class="num" key=${n.key}><h3>${n.words}</h3><b>${text(n)}${n.small ? html` <small>(${n.small})</small>` : ""}</b><p>${before(n)}</p></div>`)}</section>`;
}
