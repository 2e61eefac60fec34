// How sure: one answer with its doubt in words, or the share of wins with an interval that narrows.
import { html } from "./html.js";
import { answer, odds, closer, robots, state, act } from "./store.js";
import { named } from "./words.js";

const pc = x => `${(100 * Math.min(1, Math.max(0, x))).toFixed(2)}%`;
const hundred = x => Math.round(100 * x);

// ranges after 20, 100, 1000 matches stay visible above the bar
const seen = { number: -1, list: [] };
function history(o) {
  if (o.history && o.history.length) return o.history;
  if (seen.number !== o.number) { seen.number = o.number; seen.list = []; }
  for (const m of [20, 100, 1000]) if (o.matches >= m && !seen.list.some(h => h.mark === m)) seen.list.push({ mark: m, matches: o.matches, low: o.low, high: o.high });
  return seen.list;
}

const doubt = o => [o.sure, (o.doubts || []).length > 0 ? `Doubt comes from: ${o.doubts.map(d => d.replace(/\.$/, "")).join("; ")}.` : "", o.next].filter(Boolean).join(" ");
const one = a => {
  // what the closer look says stands in place of what the first answer could not know
  return [closer.value || a.sure || "One match at the values as they stand.", a.next].filter(Boolean).join(" ");
};

function Bar({ o, mine, other }) {
  const all = Math.max(1, o.matches), win = o.win / all, lose = o.lose / all, past = history(o).slice(0, 3);
  const label = `${mine.name} wins ${hundred(win)} of 100${other ? `, ${other.name} ${hundred(lose)}` : ""}, no winner ${hundred(o.stalemate / all)}; likely range ${hundred(o.low)} to ${hundred(o.high)}`;
  return html`<div class="odds"><div class="fun" aria-hidden="true"><span>${past.length ? `after ${past.map(h => h.mark || h.matches).join(", ")} matches` : ""}</span>${past.map((h, i) => html`<i class=${`g${i}`} style=${{ left: pc(h.low), width: pc(h.high - h.low) }}></i>`)}</div>
    <svg width="100%" height="26" role="img" aria-label=${label}>
      <rect class="s-a" x="0" y="0" width=${pc(win)} height="26" /><rect class="s-none" x=${pc(win)} y="0" width=${pc(1 - win - lose)} height="26" /><rect fill="url(#hatch)" x=${pc(1 - lose)} y="0" width=${pc(lose)} height="26" />
      <rect class="s-range" x=${pc(o.low)} y="0" width=${pc(o.high - o.low)} height="26" /><rect class="s-edge" x="0" y="0" width="100%" height="26" />
      <line class="s-at" x1=${pc(win)} x2=${pc(win)} y1="0" y2="26" />
      ${Number.isFinite(o.before_share) && html`<line class="s-cut" x1=${pc(o.before_share)} x2=${pc(o.before_share)} y1="-2" y2="28" /><line class="s-was" x1=${pc(o.before_share)} x2=${pc(o.before_share)} y1="0" y2="26" />`}</svg>
    <div class="okeys"><span>${Number.isFinite(o.before_share) ? `before: ${hundred(o.before_share)} of 100` : mine.name}</span><span>no winner: ${hundred(o.stalemate / all)}</span><span>${other ? `${other.name}: ${hundred(lose)}` : ""}</span></div></div>`;
}

const metres = x => `${x > 0 ? "+" : ""}${x.toFixed(2)} m`;

// how far the matches went: ground that yours gained, equal stretches from the least to the most
function Ground({ h, mine, other }) {
  if (!h || !h.counts || h.counts.length === 0 || !(h.high > h.low)) return null;
  const most = Math.max(1, ...h.counts), step = (h.high - h.low) / h.counts.length, all = h.counts.reduce((a, b) => a + b, 0), zero = (0 - h.low) / (h.high - h.low);
  const peak = h.counts.indexOf(most), said = `Ground that ${mine.name} gains in ${all} matches: from ${metres(h.low)} to ${metres(h.high)}, most often ${metres(h.low + peak * step)} to ${metres(h.low + (peak + 1) * step)}`;
  return html`<figure class="ground"><figcaption>Ground that ${named(mine.name, robots.value)} gains, match by match</figcaption>
    <svg width="100%" height="54" role="img" aria-label=${said}>
      ${h.counts.map((n, i) => { const tall = (50 * n) / most, middle = h.low + (i + 0.5) * step; return n > 0 && html`<rect class=${middle >= 0 ? "s-a" : "s-other"} fill=${middle >= 0 ? null : "url(#hatch)"} x=${pc(i / h.counts.length)} width=${pc(1 / h.counts.length)} y=${53 - tall} height=${tall} />`; })}
      <line class="s-middle" x1="0" x2="100%" y1="53" y2="53" />${zero > 0 && zero < 1 && html`<line class="s-flip" x1=${pc(zero)} x2=${pc(zero)} y1="0" y2="54" />`}</svg>
    <div class="okeys groundkeys"><span>${metres(h.low)}</span>${zero > 0.12 && zero < 0.88 && html`<span class="zero" style=${{ left: pc(zero) }}>0: where they met</span>`}<span>${metres(h.high)}</span></div></figure>`;
}

export function Sure() {
  const s = state.value, a = answer.value, o = odds.value, isOdds = s.mode === "odds";
  const mine = robots.value.find(r => r.yours) || robots.value[0], other = robots.value.find(r => r !== mine);
  const can = robots.value.length > 1;
  const button = can && html`<button class="surebtn" aria-pressed=${isOdds ? "true" : "false"} onClick=${() => act("/api/mode", { mode: isOdds ? "match" : "odds" })}>${isOdds ? "One match" : "How sure?"}</button>`;
  if (!isOdds) {
    if (!a) return null;
    return html`<section class="sure one" aria-label="how sure"><p class="t">${named(one(a), robots.value)}</p><div class="surebtns">${button}${!closer.value && !a.whole && html`<button class="linkbtn" onClick=${() => act("/api/closer")}>Look closer</button>`}</div></section>`;
  }

  if (!o || o.matches === 0 || !mine) return html`<section class="sure one" aria-label="how sure"><p class="t">Matches with drawn values are run.</p><div class="surebtns">${button}</div></section>`;
  const share = hundred(o.win / o.matches);
  return html`<section class="sure" aria-label="how sure"><div class="t"><b>${named(`${mine.name} wins ${share} of 100`, robots.value)}</b><br />${hundred(o.low)} to ${hundred(o.high)}, ${o.done ? `after ${o.matches} matches` : `${o.matches} matches so far`} ${button}</div>
    <${Bar} o=${o} mine=${mine} other=${other} />
    <${Ground} h=${o.histogram} mine=${mine} other=${other} />
    ${doubt(o) && html`<p class="doubt">${named(doubt(o), robots.value)}</p>`}</section>`;
}
