// A strip under a value: what the answer would be at each place of its range.
import { html } from "./html.js";
import { share } from "./scale.js";

const HEIGHT = 32, MIDDLE = HEIGHT / 2;
const pc = x => `${(100 * x).toFixed(2)}%`;

// every point fills the place half way to its neighbours
function cells(row, points) {
  const at = points.map(p => share(row, p.x));
  return points.map((p, i) => {
    const left = i === 0 ? 0 : (at[i - 1] + at[i]) / 2, right = i === points.length - 1 ? 1 : (at[i] + at[i + 1]) / 2;
    return { p, left, right, width: Math.max(0, right - left) };
  });
}

// neighbours of one state; the words stand in the half that such a band leaves free
export function bands(row, points) {
  const out = [];
  for (const c of cells(row, points)) {
    const last = out[out.length - 1];
    if (last && last.state === c.p.state) last.right = c.right;
    else out.push({ state: c.p.state, left: c.left, right: c.right });
  }

  return out;
}

function Match({ row, strip, mine, other }) {
  const fill = { win: mine, lose: other };
  return cells(row, strip.points).map(c => {
    const h = Math.max(1, Math.min(1, Math.abs(c.p.height || 0)) * (MIDDLE - 1));
    if (c.p.state === "win") return html`<rect class=${`s-${mine}`} fill=${mine === "b" ? "url(#hatch)" : null} x=${pc(c.left)} width=${pc(c.width + 0.0015)} y=${MIDDLE - h} height=${h} />`;
    if (c.p.state === "lose") return html`<rect class=${`s-${other}`} fill=${other === "b" ? "url(#hatch)" : null} x=${pc(c.left)} width=${pc(c.width + 0.0015)} y=${MIDDLE} height=${h} />`;
    if (c.p.state === "failed") return html`<rect class="s-failed" fill="url(#p-other)" x=${pc(c.left)} width=${pc(c.width)} y="10" height="12" />`;
    if (c.p.state === "nobody") return null;
    const v = Math.max(1, Math.min(1, Math.max(0, c.p.height || 0)) * (HEIGHT - 2));
    return html`<rect class=${`s-${mine}`} fill=${mine === "b" ? "url(#hatch)" : null} x=${pc(c.left)} width=${pc(c.width + 0.0015)} y=${HEIGHT - v} height=${v} />`;
  });
}

function Shares({ row, strip }) {
  return cells(row, strip.points).map(c => {
    if (c.p.share === null || c.p.share === undefined) return null;
    const h = HEIGHT * Math.max(0, Math.min(1, c.p.share));
    return html`<rect fill="url(#hatch)" x=${pc(c.left)} width=${pc(c.width + 0.0015)} y="0" height=${HEIGHT - h} /><rect class="s-a" x=${pc(c.left)} width=${pc(c.width + 0.0015)} y=${HEIGHT - h} height=${h} />`;
  });
}

const words = { win: n => `${n[0]} wins`, lose: n => `${n[1]} wins`, nobody: () => "nobody moves", failed: () => "no answer" };

// the outcome at a value, in words, for those who do not see the strip
export function outcome(row, strip, value, names) {
  if (!strip || !strip.points || strip.points.length === 0) return "";
  const near = strip.points.reduce((a, b) => (Math.abs(share(row, b.x) - share(row, value)) < Math.abs(share(row, a.x) - share(row, value)) ? b : a));
  if (near.share !== null && near.share !== undefined) return `${Math.round(100 * near.share)} of 100`;
  return words[near.state] ? words[near.state](names) : near.short || "";
}

// Words take about this share of a strip; where the knob would stand on them, they begin behind it.
const WIDE = 0.2;

function place(b, at) {
  const left = x => ({ left: `calc(${pc(x)} + ${x === at ? 11 : 3}px)` }), right = x => ({ right: `calc(${pc(1 - x)} + ${x === at ? 11 : 3}px)` });
  const starts = at > b.left - 0.03 && at < b.left + WIDE, ends = at < b.right + 0.03 && at > b.right - WIDE;
  if (b.left > 0.5) return !ends ? right(b.right) : at - WIDE > b.left ? right(at) : at + WIDE < b.right ? left(at) : right(b.right);
  return !starts ? left(b.left) : at + WIDE < b.right ? left(at) : at - WIDE > b.left ? right(at) : left(b.left);
}

export function Strip({ row, strip, names, tones, stale, at }) {
  const isShares = strip && strip.mode === "odds", has = strip && strip.points && strip.points.length > 0;
  const flip = strip && strip.flip && Number.isFinite(strip.flip.x) ? share(row, strip.flip.x) : null;
  const isMatch = has && strip.points.some(p => p.state === "win" || p.state === "lose" || p.state === "nobody");
  const shown = has && !isShares && isMatch ? bands(row, strip.points).filter(b => words[b.state] && b.right - b.left > (b.state === "nobody" ? 0.2 : 0.13)) : [];
  // one word for each state: in its widest band
  const best = [...new Set(shown.map(b => b.state))].map(s => shown.filter(b => b.state === s).reduce((a, b) => (b.right - b.left > a.right - a.left ? b : a)));
  return html`<div class=${`strip ${stale ? "stale" : ""}`} aria-hidden="true">
    <svg width="100%" height=${HEIGHT}>${has && (isShares ? html`<${Shares} row=${row} strip=${strip} />` : html`<${Match} row=${row} strip=${strip} mine=${tones[0]} other=${tones[1]} />`)}
      ${isShares ? html`<line class="s-half" x1="0" x2="100%" y1=${MIDDLE} y2=${MIDDLE} />` : isMatch && html`<line class="s-middle" x1="0" x2="100%" y1=${MIDDLE} y2=${MIDDLE} />`}
      ${flip !== null && html`<line class="s-flip" x1=${pc(flip)} x2=${pc(flip)} y1="0" y2=${HEIGHT} />`}</svg>
    ${best.map(b => html`<span class=${`w ${b.state === "win" ? `down ${tones[0] === "b" ? "r1" : "r0"}` : b.state === "lose" ? `up ${tones[1] === "b" ? "r1" : "r0"}` : "up soft"}`}
      style=${place(b, at)}>${words[b.state](names)}</span>`)}
  </div>`;
}
