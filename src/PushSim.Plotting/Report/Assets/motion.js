// How the replay of a run is read and drawn, for the report's page and for the workbench: lengths in 0.01 mm, angles in 0.1 mrad, times in 10 µs.
export const MM = 0.01, RAD = 1e-4, SECOND = 1e-5;

export const endOf = replay => (replay && replay.t.length ? replay.t[replay.t.length - 1] * SECOND : 0);

// samples around a time, and the share of the way between them
export function frameAt(replay, t) {
  const times = replay.t, want = t / SECOND;
  let low = 0, high = times.length - 1;
  while (high - low > 1) { const m = (low + high) >> 1; if (times[m] <= want) low = m; else high = m; }
  const share = high > low ? (want - times[low]) / (times[high] - times[low]) : 0;
  return [low, high, Math.min(1, Math.max(0, share))];
}

// where every robot is at a time: mm and rad
export function poses(replay, t) {
  const [i, j, f] = frameAt(replay, Math.min(t, endOf(replay)));
  const at = a => (a && a.length ? a[i] + f * (a[j] - a[i]) : 0);
  return replay.robots.map(r => ({ x: at(r.x) * MM, y: at(r.y) * MM, heading: at(r.h) * RAD, heave: at(r.z) * MM, pitch: at(r.p) * RAD }));
}

export const meanX = list => list.reduce((s, p) => s + p.x, 0) / list.length;
export const reach = r => Math.max(...r.outline.map(c => Math.hypot(c[0], c[1])), ...r.wheels.map(w => Math.hypot(Math.abs(w.x) + w.r, w.y) + 0.4 * w.r)) * MM;
export const tallest = replay => Math.max(...replay.robots.map(r => Math.max(...r.side.map(c => c[1] + r.com), ...r.wheels.map(w => 2 * w.r)))) * MM;

// how far the middle of all robots has gone along the floor since the start [mm]
export const gone = (replay, t) => ({ from: meanX(poses(replay, 0)), to: meanX(poses(replay, t)) });

export const eventAt = (replay, t) => (replay.events || []).filter(e => e.t * SECOND <= t + 1e-6).pop();

// floor that is ever reached, lines and tether too, with a margin [mm]
export function bounds(replays) {
  const b = { left: Infinity, right: -Infinity, low: Infinity, high: -Infinity };
  const widen = (x, y, r) => {
    b.left = Math.min(b.left, x - r); b.right = Math.max(b.right, x + r);
    b.low = Math.min(b.low, y - r); b.high = Math.max(b.high, y + r);
  };
  for (const d of replays) {
    d.robots.forEach(r => { const s = reach(r); r.x.forEach((x, i) => widen(x * MM, r.y[i] * MM, s)); });
    for (const x of d.lines || []) { b.left = Math.min(b.left, x * MM - 20); b.right = Math.max(b.right, x * MM + 20); }
    if (d.tether) d.tether.x.forEach(x => widen(x * MM, d.tether.y * MM, 10));
  }

  return b;
}

// side of the squares of a floor, at least so long [mm]
export const squares = least => [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000].find(s => s >= least) || 10000;
export const squareWords = side => (side >= 1000 ? `${side / 1000} m` : `${side} mm`);

// corners as an SVG attribute; up: 1 where y goes up, -1 as on a screen
export const points = (corners, scale, up) => corners.map(c => `${(c[0] * MM * scale).toFixed(2)},${(up * c[1] * MM * scale).toFixed(2)}`).join(" ");

// a robot from above about its own place: body, arrow to its nose, wheels
export function fromAbove(r, scale, up, mostArrow = Infinity) {
  const xs = r.outline.map(c => c[0] * MM * scale), front = Math.max(...xs), a = Math.min(mostArrow, 0.09 * (front - Math.min(...xs)));
  return {
    front, length: front - Math.min(...xs), body: points(r.outline, scale, up),
    arrow: `M${(front - 2.1 * a).toFixed(2)} ${(-a).toFixed(2)}L${(front - 1.1 * a).toFixed(2)} 0L${(front - 2.1 * a).toFixed(2)} ${a.toFixed(2)}`,
    wheels: r.wheels.map(w => { const radius = w.r * MM * scale, half = 0.32 * radius; return { x: w.x * MM * scale - radius, y: up * w.y * MM * scale - half, width: 2 * radius, height: 2 * half }; }),
  };
}

// and from its right, about its balance point
export const fromSide = (r, scale, up) => ({ body: points(r.side, scale, up), wheels: r.wheels.map(w => ({ cx: w.x * MM * scale, cy: up * (w.r - r.com) * MM * scale, r: w.r * MM * scale })) });

// what is seen of its length from the side [1]; a robot alone is followed as it turns
export const facing = (pose, isAlone) => (isAlone ? 1 : Math.cos(pose.heading));
