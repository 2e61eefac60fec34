// Curves over time, drawn by uPlot (a classic script that sets the global name): now by robot, before in grey, a line at the moment.
/* global uPlot */
import { clamp } from "./scale.js";

const token = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();
const font = "12px system-ui, 'DejaVu Sans', Verdana, sans-serif";

// all times of all series in one row, as uPlot wants them; gaps are null
function table(list) {
  const same = list.every(s => s.t.length === list[0].t.length && s.t[s.t.length - 1] === list[0].t[list[0].t.length - 1]);
  if (same) return [list[0].t, ...list.map(s => s.y)];
  return uPlot.join(list.map(s => [s.t, s.y]));
}

const seconds = (_, splits) => splits.map(v => `${Number(v.toFixed(3))} s`);

// curve: { unit, series, before, lines, breaks }; with breaks a null is a gap that is seen; returns { at(time), free() }
export function drawPlot(box, { curve, last, width, height, left, right, onSeek, lines }) {
  const now = curve.series || [], before = curve.before || [];
  const list = [...before, ...now];
  if (list.length === 0 || list.every(s => s.t.length === 0)) return { at() {}, free() {} };
  const ink = token("--ink"), soft = token("--soft"), grid = token("--grid"), ghost = token("--ghost");
  const hue = r => (r === "b" || r === 1 ? token("--c1") : r === "a" || r === 0 ? token("--c0") : ink);
  const line = (s, old) => ({ label: s.name, stroke: old ? ghost : hue(s.robot), width: old ? 1.4 : 2.4, dash: s.robot === "b" || s.robot === 1 ? [7, 4] : [], points: { show: false }, spanGaps: !curve.breaks });
  const levels = (lines || []).filter(l => Number.isFinite(l.y));
  const plot = new uPlot({
    width, height, padding: [8, right, 0, 0], legend: { show: false }, cursor: { show: false }, select: { show: false },
    scales: {
      x: { time: false, range: [0, last] },
      y: { range: (u, low, high) => {
        const all = [low ?? 0, high ?? 0, ...levels.map(l => l.y)], a = Math.min(...all), b = Math.max(...all), room = 0.06 * (b - a || 1);
        return [a - room, b + room];
      } },
    },
    series: [{}, ...before.map(s => line(s, true)), ...now.map(s => line(s, false))],
    axes: [
      { stroke: soft, font, size: 24, gap: 3, grid: { stroke: grid, width: 1 }, ticks: { show: false }, values: seconds, space: 70 },
      { stroke: soft, font, size: left, gap: 6, grid: { stroke: grid, width: 1 }, ticks: { show: false }, space: 26, values: (_, splits) => splits.map(v => `${Number(v.toPrecision(6))}`) },
    ],
    hooks: { draw: [u => {
      for (const l of levels) {
        const y = u.valToPos(l.y, "y", true), c = u.ctx;
        c.save();
        c.strokeStyle = hue(l.robot);
        c.lineWidth = 2 * devicePixelRatio;
        c.setLineDash(l.robot === "b" || l.robot === 1 ? [7 * devicePixelRatio, 4 * devicePixelRatio] : []);
        c.beginPath();
        c.moveTo(u.bbox.left, y);
        c.lineTo(u.bbox.left + u.bbox.width, y);
        c.stroke();
        c.restore();
      }
    }] },
  }, table(list), box);
  const mark = document.createElement("div");
  mark.className = "moment";
  plot.over.append(mark);
  const seek = e => {
    if (e.type !== "pointerdown" && !e.buttons) return;
    if (e.type === "pointerdown") plot.over.setPointerCapture(e.pointerId);
    const edge = plot.over.getBoundingClientRect();
    onSeek(clamp((e.clientX - edge.left) / edge.width, 0, 1) * last);
  };
  plot.over.addEventListener("pointerdown", seek);
  plot.over.addEventListener("pointermove", seek);
  return {
    at(t) { mark.style.transform = `translateX(${(t / last) * plot.over.clientWidth}px)`; },
    free() { plot.destroy(); },
  };
}
