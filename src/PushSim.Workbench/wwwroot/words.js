// Texts of the engine with the robots' names in the robots' colours. All text goes through the view library as text, never as markup.
import { html } from "./html.js";

const escape = text => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

export const tone = robot => (robot === "b" || robot === 1 ? "r1" : "r0");

// The sentence, each name as its own element.
export function named(text, robots) {
  const list = (robots || []).filter(r => r.name && r.name.length > 0);
  if (!text || list.length === 0) return text || "";
  const names = [...list].sort((p, q) => q.name.length - p.name.length);
  const pattern = new RegExp("(^|[^\\p{L}\\p{N}_])(" + names.map(r => escape(r.name)).join("|") + ")(?![\\p{L}\\p{N}_])", "gu");
  const parts = [];
  let from = 0;
  for (const hit of text.matchAll(pattern)) {
    const at = hit.index + hit[1].length;
    parts.push(text.slice(from, at));
    parts.push(html`<span class=${tone(names.find(r => r.name === hit[2]).id)}>${hit[2]}</span>`);
    from = at + hit[2].length;
  }

  parts.push(text.slice(from));
  return parts;
}

// a file as a builder names it
export const fileName = path => (path || "").split(/[\\/]/).pop();
export const count = (n, one, many) => `${n} ${n === 1 ? one : many}`;
export const seconds = t => `${t.toFixed(2)} s`;
