// Reads the replay of a run as the report page's script does: lengths in 0.01 mm, angles in 0.1 mrad, times in 10 µs.
export const MM = 0.01;
const RAD = 1e-4, SECOND = 1e-5;

export const endOf = replay => (replay && replay.t.length ? replay.t[replay.t.length - 1] * SECOND : 0);

// samples around a time, and the share of the way between them
function frame(replay, t) {
  const times = replay.t, want = t / SECOND;
  let low = 0, high = times.length - 1;
  while (high - low > 1) { const m = (low + high) >> 1; if (times[m] <= want) low = m; else high = m; }
  const share = high > low ? (want - times[low]) / (times[high] - times[low]) : 0;
  return [low, high, Math.min(1, Math.max(0, share))];
}

// where every robot is at a time: mm and rad
export function poses(replay, t) {
  const [i, j, f] = frame(replay, Math.min(t, endOf(replay)));
  const at = a => (a && a.length ? a[i] + f * (a[j] - a[i]) : 0);
  return replay.robots.map(r => ({ x: at(r.x) * MM, y: at(r.y) * MM, heading: at(r.h) * RAD, heave: at(r.z) * MM, pitch: at(r.p) * RAD }));
}

export const reach = r => Math.max(...r.outline.map(c => Math.hypot(c[0], c[1])), ...r.wheels.map(w => Math.hypot(Math.abs(w.x) + w.r, w.y) + 0.4 * w.r)) * MM;
export const tallest = replay => Math.max(...replay.robots.map(r => Math.max(...r.side.map(c => c[1] + r.com), ...r.wheels.map(w => 2 * w.r)))) * MM;

// how far the middle of all robots has gone along the floor since the start [mm]
export function gone(replay, t) {
  const now = poses(replay, t), start = poses(replay, 0);
  const mean = list => list.reduce((s, p) => s + p.x, 0) / list.length;
  return { from: mean(start), to: mean(now) };
}

export const eventAt = (replay, t) => (replay.events || []).filter(e => e.t * SECOND <= t + 1e-6).pop();

// floor that is ever reached, with a margin [mm]
export function bounds(replays) {
  const b = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity };
  for (const d of replays) {
    d.robots.forEach(r => {
      const s = reach(r);
      for (let i = 0; i < r.x.length; i++) {
        const x = r.x[i] * MM, y = r.y[i] * MM;
        if (x - s < b.left) b.left = x - s;
        if (x + s > b.right) b.right = x + s;
        if (y - s < b.low) b.low = y - s;
        if (y + s > b.high) b.high = y + s;
      }
    });
    for (const x of d.lines || []) { b.left = Math.min(b.left, x * MM - 20); b.right = Math.max(b.right, x * MM + 20); }
  }

  return b;
}
