
(() => {
  "use strict";
  const data = JSON.parse(document.getElementById("replay-data").textContent);
  const at = id => document.getElementById(id);
  const stage = at("stage"), side = at("side"), said = at("said"), jumps = at("marks"), slider = at("time"), play = at("play"), clock = at("clock"), speed = at("speed"), follow = at("follow");
  const DEG = 180 / Math.PI, end = endOf(data), times = data.t.map(t => t * SECOND), last = times.length - 1;
  const still = matchMedia("(prefers-reduced-motion: reduce)");

  const make = (name, parent, attributes) => {
    const e = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const k in attributes) e.setAttribute(k, attributes[k]);
    parent.append(e);
    return e;
  };
  // what is seen: all that is ever reached by an outline, and a margin; in millimetres, y up
  const reaches = data.robots.map(reach), size = Math.max(...reaches), box = bounds([data]);
  const margin = 0.35 * size;
  const whole = [box.left - margin, box.low - margin, box.right - box.left + 2 * margin, box.high - box.low + 2 * margin];
  // neither a slit nor a tower: at most 2.6 wide for 1 high, at least 1.4
  const grow = (i, length) => { if (whole[2 + i] < length) { whole[i] -= 0.5 * (length - whole[2 + i]); whole[2 + i] = length; } };
  grow(1, whole[2] / 2.6);
  grow(0, whole[3] * 1.4);
  const near = [Math.min(whole[2], 7 * size), 0];
  near[1] = near[0] * whole[3] / whole[2];
  const pen = () => view[2] / 900;
  let view = whole;

  const world = make("g", stage, { transform: "scale(1 -1)" });
  const raster = squares(near[0] / 16);
  const grid = make("path", world, { class: "grid" });
  let lines = "";
  const far = [whole[0] - whole[2], whole[1] - whole[3], whole[0] + 2 * whole[2], whole[1] + 2 * whole[3]];
  for (let x = Math.ceil(far[0] / raster) * raster; x < far[2]; x += raster) lines += "M" + x + " " + far[1] + "V" + far[3];
  for (let y = Math.ceil(far[1] / raster) * raster; y < far[3]; y += raster) lines += "M" + far[0] + " " + y + "H" + far[2];
  grid.setAttribute("d", lines);
  data.patches.forEach(p => make("polygon", world, { class: "patch", points: points(p, 1, 1) }));
  data.lines.forEach((x, k) => make("path", world, { class: "line l" + k, d: "M" + x * MM + " " + far[1] + "V" + far[3] }));
  data.walls.forEach(p => make("polygon", world, { class: "wall", points: points(p, 1, 1) }));
  const trails = data.robots.map((r, k) => make("polyline", world, { class: "trail t" + k }));

  const robots = data.robots.map((r, k) => {
    const g = make("g", world, { id: "robot-" + k });
    const shape = fromAbove(r, 1, 1);
    const body = make("polygon", g, { class: "body b" + k, points: shape.body });
    make("path", g, { class: "body b" + k, d: shape.arrow });
    const wheels = r.wheels.map((w, n) => {
      const f = shape.wheels[n], frame = { x: f.x, y: f.y, height: f.height };
      return {
        w, radius: f.width / 2,
        shell: make("rect", g, { class: "wheel", width: f.width, ...frame }),
        fill: make("rect", g, { width: 0, ...frame }),
        up: make("path", g, { class: "up", d: "M" + f.x + " " + f.y + "l" + f.width + " " + f.height + "m0 " + -f.height + "l" + -f.width + " " + f.height }),
      };
    });
    make("circle", g, { class: "centre", r: 0.045 * reaches[k] });
    return { r, g, body, wheels };
  });
  const tether = data.tether && make("path", world, { class: "tether" });
  const names = data.robots.map((r, k) => { const t = make("text", stage, { class: "name n" + k, "text-anchor": "middle" }); t.textContent = r.name; return t; });
  const scale = make("text", stage, { class: "name" });
  scale.textContent = "squares " + squareWords(raster);

  // from the right of the floor: x as above, height up, one scale with the view from above
  const field = make("g", side, { transform: "scale(1 -1)" });
  const tall = tallest(data);
  make("path", field, { class: "ground", d: "M" + far[0] + " 0H" + far[2] });
  data.lines.forEach((x, k) => make("path", field, { class: "line l" + k, d: "M" + x * MM + " 0V" + 1.5 * tall }));
  data.walls.forEach(p => { const xs = p.map(c => c[0] * MM); make("rect", field, { class: "wall", x: Math.min(...xs), y: 0, width: Math.max(...xs) - Math.min(...xs), height: tall }); });
  const sides = data.robots.map((r, k) => {
    const g = make("g", field, {});
    const shape = fromSide(r, 1, 1);
    make("polygon", g, { class: "body b" + k, points: shape.body });
    shape.wheels.forEach(w => make("circle", g, { class: "wheel", ...w }));
    make("circle", g, { class: "centre", r: 0.045 * reaches[k] });
    return g;
  });
  const way = data.robots.length > 1 && make("path", field, { class: "push" });
  const words = data.lines.map((x, k) => { const t = make("text", side, { class: "name n" + k, "text-anchor": x > 0 ? "end" : "start" }); t.textContent = "line of " + data.robots[k].name; return t; });

  const cells = [];
  data.robots.forEach(r => r.wheels.forEach(w => {
    const row = at("wheels").tBodies[0].insertRow();
    for (const [k, text] of [r.name, w.name, "", ""].entries()) {
      const cell = row.insertCell();
      cell.textContent = text;
      if (k > 1) { cell.className = "n"; cells.push(cell); }
    }
  }));
  let pushCell = null;
  if (data.push || data.tether) {
    const row = at("wheels").tBodies[0].insertRow();
    row.insertCell().textContent = data.push ? "push of " + data.robots[0].name : "pull on the tether";
    row.insertCell();
    pushCell = row.insertCell();
    pushCell.className = "n";
    row.insertCell();
  }

  // the curve that matters most stands under the stage again, with the moment on it
  document.querySelectorAll(".hero .plot[data-from]").forEach(p => at("curve").append(p.cloneNode(true)));
  const marks = [...document.querySelectorAll(".plot[data-from]")].map(s => {
    const n = x => Number(s.dataset[x]);
    return { svg: s, line: s.querySelector(".now"), left: n("left"), slope: (n("right") - n("left")) / (n("to") - n("from")), from: n("from") };
  });

  // the lighter the faster: steps that are told apart in grey, too
  const stops = [[29, 42, 68], [138, 106, 154], [242, 230, 184]];
  const colour = share => {
    const s = 2 * Math.min(1, Math.max(0, share)), i = Math.min(1, Math.floor(s)), f = s - i;
    return "rgb(" + stops[i].map((c, k) => Math.round(c + f * (stops[i + 1][k] - c))).join(",") + ")";
  };

  let now = 0;
  const show = t => {
    now = Math.min(end, Math.max(0, t));
    const [i, j, f] = frameAt(data, now), posed = poses(data, now);
    const value = a => a[i] + f * (a[j] - a[i]);
    const centres = posed.map(p => [p.x, p.y]);
    if (follow.checked) {
      const x = centres.reduce((s, c) => s + c[0], 0) / centres.length, y = centres.reduce((s, c) => s + c[1], 0) / centres.length;
      view = [x - 0.5 * near[0], y - 0.5 * near[1], near[0], near[1]];
    } else {
      view = whole;
    }
    stage.setAttribute("viewBox", [view[0], -view[1] - view[3], view[2], view[3]].map(v => v.toFixed(2)).join(" "));
    const p = pen();
    stage.querySelectorAll(".body, .push, .tether").forEach(e => e.setAttribute("stroke-width", (2.4 * p).toFixed(3)));
    stage.querySelectorAll(".wheel, .up, .wall").forEach(e => e.setAttribute("stroke-width", (1.5 * p).toFixed(3)));
    stage.querySelectorAll(".grid, .line, .trail, .patch").forEach(e => e.setAttribute("stroke-width", (1.4 * p).toFixed(3)));
    const font = Math.min(15 * p * 900 / Math.max(300, Math.min(900, stage.clientWidth || 900)), 0.1 * view[3]);
    let cell = 0;
    robots.forEach((o, k) => {
      o.g.setAttribute("transform", "translate(" + centres[k].map(v => v.toFixed(3)).join(" ") + ") rotate(" + (posed[k].heading * DEG).toFixed(3) + ")");
      // above its robot; below the lower of two that do not stand side by side
      const other = centres[1 - k], low = other && other[1] - centres[k][1] > 0.5 * reaches[k];
      names[k].setAttribute("x", centres[k][0].toFixed(2));
      names[k].setAttribute("y", (low ? -centres[k][1] + reaches[k] + font : -centres[k][1] - reaches[k] - 0.35 * font).toFixed(2));
      for (const w of o.wheels) {
        const load = value(w.w.load), slip = value(w.w.slip);
        w.fill.setAttribute("width", (2 * w.radius * Math.min(1, Math.max(0, load / o.r.fullLoad))).toFixed(2));
        w.fill.setAttribute("fill", colour(slip / data.fullSlip));
        w.shell.classList.toggle("slips", slip > 50);
        w.up.classList.toggle("on", load <= 0);
        cells[cell++].textContent = (load / 100).toFixed(2);
        cells[cell++].textContent = (slip / 1000).toFixed(2);
      }
      let trail = "";
      for (let n = 0; n <= i; n++) trail += (o.r.x[n] * MM).toFixed(1) + "," + (o.r.y[n] * MM).toFixed(1) + " ";
      trails[k].setAttribute("points", trail + centres[k][0].toFixed(1) + "," + centres[k][1].toFixed(1));
    });
    if (robots.length === 2) {
      // names that would run into each other leave from between the robots to either side
      const left = centres[0][0] <= centres[1][0] ? 0 : 1, middle = 0.5 * (centres[0][0] + centres[1][0]);
      const meet = Math.abs(centres[0][0] - centres[1][0]) < 0.32 * font * (names[0].textContent.length + names[1].textContent.length + 1) && Math.abs(names[0].getAttribute("y") - names[1].getAttribute("y")) < 1.2 * font;
      names.forEach((t, k) => {
        t.setAttribute("text-anchor", !meet ? "middle" : k === left ? "end" : "start");
        if (meet) t.setAttribute("x", (middle + (k === left ? -0.35 : 0.35) * font).toFixed(2));
      });
    }
    for (const t of [...names, scale]) { t.setAttribute("font-size", font.toFixed(2)); t.setAttribute("stroke-width", (0.22 * font).toFixed(2)); }
    const room = view[2] * 0.16, high = Math.max(1.55 * tall, 0.14 * view[2]);
    side.setAttribute("viewBox", [view[0], -high, view[2], high + 0.12 * high].map(v => v.toFixed(2)).join(" "));
    side.querySelectorAll(".body, .push").forEach(e => e.setAttribute("stroke-width", (2.4 * p).toFixed(3)));
    side.querySelectorAll(".wheel, .wall, .line, .ground").forEach(e => e.setAttribute("stroke-width", (1.5 * p).toFixed(3)));
    sides.forEach((g, k) => {
      const r = data.robots[k];
      g.setAttribute("transform", "translate(" + centres[k][0].toFixed(3) + " " + (r.com * MM + posed[k].heave).toFixed(3) + ") scale(" + facing(posed[k], robots.length === 1).toFixed(4) + " 1) rotate(" + (-posed[k].pitch * DEG).toFixed(3) + ")");
    });
    words.forEach((t, k) => {
      t.setAttribute("font-size", (0.9 * font).toFixed(2));
      t.setAttribute("stroke-width", (0.2 * font).toFixed(2));
      t.setAttribute("x", (data.lines[k] * MM + (data.lines[k] > 0 ? -0.4 : 0.4) * font).toFixed(2));
      t.setAttribute("y", (-high + 1.1 * font).toFixed(2));
    });
    if (way) {
      // which way the pair goes: how far its middle moves within a tenth of a second
      const middle = t => meanX(poses(data, Math.min(end, Math.max(0, t))));
      const v = (middle(now + 0.05) - middle(now - 0.05)) / 0.1, length = Math.min(room, Math.abs(v) * 0.35), a = Math.sign(v), x = middle(now), y = 1.28 * tall, b = 0.05 * size;
      way.setAttribute("d", length < 2 * b ? "" : "M" + [[-length, -b], [length - 3 * b, -b], [length - 3 * b, -2.4 * b], [length, 0], [length - 3 * b, 2.4 * b], [length - 3 * b, b], [-length, b]].map(c => (x + a * c[0]).toFixed(2) + " " + (y + c[1]).toFixed(2)).join("L") + "Z");
    }
    said.textContent = now >= end - 1e-6 ? data.end : (eventAt(data, now) || { words: "" }).words;
    scale.setAttribute("x", (view[0] + 0.6 * font).toFixed(2));
    scale.setAttribute("y", (-view[1] - 0.7 * font).toFixed(2));
    if (data.push) {
      const q = data.push, fx = value(q.fx), fy = value(q.fy), force = Math.hypot(fx, fy);
      pushCell.textContent = (force / 100).toFixed(2);
    }
    if (data.tether) {
      const h = posed[0].heading, q = data.tether, x = q.hookX * MM, y = q.hookY * MM;
      tether.setAttribute("d", "M" + (centres[0][0] + x * Math.cos(h) - y * Math.sin(h)).toFixed(2) + " " + (centres[0][1] + x * Math.sin(h) + y * Math.cos(h)).toFixed(2) + "L" + (value(q.x) * MM).toFixed(2) + " " + (q.y * MM).toFixed(2));
      if (!data.push) pushCell.textContent = (value(q.f) / 100).toFixed(2);
    }
    const text = now.toFixed(3) + " s";
    clock.textContent = text;
    slider.setAttribute("aria-valuetext", text + " of " + end.toFixed(3) + " s");
    for (const m of marks) { m.line.setAttribute("transform", "translate(" + (m.left + m.slope * (now - m.from)).toFixed(2) + " 0)"); m.line.classList.add("on"); }
  };
  const go = t => { show(t); slider.value = String(now); };

  let running = false, before = 0, clockTime = 0;
  const tick = stamp => {
    if (!running) return;
    clockTime += Number(speed.value) * (stamp - before) / 1000;
    before = stamp;
    // who asks for less motion sees ten still pictures a second of the robots' time
    go(still.matches ? Math.floor(clockTime * 10) / 10 : clockTime);
    if (clockTime >= end) { go(end); set(false); } else requestAnimationFrame(tick);
  };
  const set = on => {
    running = on;
    play.textContent = on ? "Pause" : "Play";
    if (on) {
      clockTime = now >= end ? 0 : now;
      before = performance.now();
      requestAnimationFrame(tick);
    }
  };

  for (const e of data.events) {
    const b = document.createElement("button"), o = document.createElement("option");
    b.type = "button";
    b.textContent = e.words + ", " + (e.t * SECOND).toFixed(2) + " s";
    b.addEventListener("click", () => { set(false); go(e.t * SECOND); });
    jumps.append(b);
    o.value = String(e.t * SECOND);
    at("events").append(o);
  }
  // a curve over time is a slider, too
  for (const m of marks) {
    const seek = e => {
      const r = m.svg.getBoundingClientRect(), x = (e.clientX - r.left) * m.svg.viewBox.baseVal.width / r.width;
      set(false);
      go(m.from + (x - m.left) / m.slope);
    };
    m.svg.addEventListener("pointerdown", e => { if (e.button === 0) { m.svg.setPointerCapture(e.pointerId); seek(e); } });
    m.svg.addEventListener("pointermove", e => { if (m.svg.hasPointerCapture(e.pointerId)) seek(e); });
  }

  play.addEventListener("click", () => set(!running));
  slider.addEventListener("input", () => { set(false); show(Number(slider.value)); });
  follow.addEventListener("change", () => show(now));
  addEventListener("resize", () => show(now));
  at("replay").addEventListener("keydown", e => {
    if (e.ctrlKey || e.metaKey || e.altKey || e.target === speed) return;
    const [i, , f] = frameAt(data, now), n = e.shiftKey ? 10 : 1;
    const here = now >= end ? last : i;
    const keys = {
      " ": () => set(!running),
      ArrowRight: () => { set(false); go(times[Math.min(last, here + n)]); },
      ArrowLeft: () => { set(false); go(times[Math.max(0, f > 0 && here < last ? here + 1 - n : here - n)]); },
      Home: () => { set(false); go(0); },
      End: () => { set(false); go(end); },
      "[": () => { speed.selectedIndex = Math.max(0, speed.selectedIndex - 1); },
      "]": () => { speed.selectedIndex = Math.min(speed.options.length - 1, speed.selectedIndex + 1); },
    };
    // a button and a box have their own meaning for the space bar; a table scrolls with the arrows
    if (!keys[e.key] || (e.key === " " && (e.target === play || e.target === follow)) || e.target.classList.contains("scroll")) return;
    e.preventDefault();
    keys[e.key]();
  });

  at("player").hidden = false;
  follow.checked = whole[2] > 14 * size;
  go(end);
})();
