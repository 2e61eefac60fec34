// The robot from above and from its right, to one scale. Its labelled parts are the buttons; the shapes are a second target.
import { html } from "./html.js";
import { part, phone } from "./store.js";

// top left to bottom right, as the lead lines leave the drawing without crossing
const order = ["controllers", "battery", "motors", "body", "nose", "tyres"];

const choose = id => { part.value = part.value === id ? "" : id; };

const points = list => list.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");

const extent = (list, axis) => {
  const all = list.flatMap(p => p).map(p => p[axis]);
  return [Math.min(...all), Math.max(...all)];
};

const corners = r => [[r.x - r.length / 2, r.y - r.width / 2], [r.x + r.length / 2, r.y + r.width / 2]];

// outlines of both views in mm, and one scale for both
function frame(d, width, height, both) {
  const top = d.top, side = d.side;
  const above = [top.body, ...(top.wheels || []).map(corners)].filter(l => l.length);
  const [x0, x1] = extent(above, 0), [y0, y1] = extent(above, 1);
  const beside = [side.body, ...(side.wheels || []).map(w => [[w.x - w.radius, w.z - w.radius], [w.x + w.radius, w.z + w.radius]])].filter(l => l.length);
  const [sx0, sx1] = extent(beside, 0), [, z1] = extent(beside, 1);
  let scale = Math.min(width / Math.max(1, x1 - x0), (height - 8) / Math.max(1, y1 - y0));
  if (both) scale = Math.min(scale, width / Math.max(1, sx1 - sx0), (height - 42) / Math.max(1, z1));
  return { scale, x0, x1, y0, y1, sx0, sx1, z1 };
}

function Above({ d, f, left, middle }) {
  const px = x => left + (x - f.x0) * f.scale, py = y => middle - (y - (f.y0 + f.y1) / 2) * f.scale;
  const box = (r, name, id, rx = 2) => html`<rect class=${name} data-part=${id} x=${px(r.x - r.length / 2)} y=${py(r.y + r.width / 2)} width=${r.length * f.scale} height=${r.width * f.scale} rx=${rx} onClick=${() => choose(id)} />`;
  const t = d.top;
  return html`<g class="shapes">
    <polygon class="body" points=${points(t.body.map(([x, y]) => [px(x), py(y)]))} onClick=${() => choose("body")} />
    ${t.nose && t.nose.length > 1 && html`<polyline class="nose" points=${points(t.nose.map(([x, y]) => [px(x), py(y)]))} onClick=${() => choose("nose")} />`}
    ${(t.wheels || []).map(w => box(w, "wheel", "tyres", 3))}
    ${(t.motors || []).map(m => box(m, "motor", "motors"))}
    ${t.pack && box(t.pack, "pack", "battery")}
    ${(t.controllers || []).map(c => box(c, "esc", "controllers"))}
    ${t.balance && html`<circle class="cg" cx=${px(t.balance[0])} cy=${py(t.balance[1])} r="4" />`}</g>`;
}

function Beside({ d, f, left, ground }) {
  const px = x => left + (x - f.sx0) * f.scale, pz = z => ground - z * f.scale, s = d.side;
  return html`<g class="shapes">
    <line class="ground" x1=${left - 10} x2=${left + (f.sx1 - f.sx0) * f.scale + 10} y1=${ground} y2=${ground} />
    <polygon class="body" points=${points(s.body.map(([x, z]) => [px(x), pz(z)]))} onClick=${() => choose("body")} />
    ${s.nose && s.nose.length > 1 && html`<polyline class="nose" points=${points(s.nose.map(([x, z]) => [px(x), pz(z)]))} onClick=${() => choose("nose")} />`}
    ${s.pack && html`<rect class="pack" x=${px(s.pack.x - s.pack.length / 2)} y=${pz(s.pack.z + s.pack.height / 2)} width=${s.pack.length * f.scale} height=${s.pack.height * f.scale} rx="2" onClick=${() => choose("battery")} />`}
    ${(s.wheels || []).map(w => html`<circle class="wheel" cx=${px(w.x)} cy=${pz(w.z)} r=${w.radius * f.scale} onClick=${() => choose("tyres")} />`)}
    ${(s.motors || []).map(m => html`<circle class="motor" cx=${px(m.x)} cy=${pz(m.z)} r=${m.radius * f.scale} onClick=${() => choose("motors")} />`)}
    ${s.balance && html`<circle class="cg" cx=${px(s.balance[0])} cy=${pz(s.balance[1])} r="4" />`}</g>`;
}

// where a part's lead line ends: in the top view for what lies left, in the side view for body and tyres
function anchor(id, d, f, place) {
  const t = d.top, s = d.side;
  const above = (x, y) => [place.left + (x - f.x0) * f.scale, place.middle - (y - (f.y0 + f.y1) / 2) * f.scale, "l"];
  const beside = (x, z) => [place.side + (x - f.sx0) * f.scale, place.ground - z * f.scale, "r"];
  if (id === "controllers" && t.controllers && t.controllers.length) { const c = t.controllers.reduce((a, b) => (b.y > a.y ? b : a)); return above(c.x + c.length / 2, c.y); }
  if (id === "battery" && t.pack) return above(t.pack.x + t.pack.length / 2, t.pack.y);
  if (id === "motors" && t.motors && t.motors.length) { const m = t.motors.reduce((a, b) => (b.x - b.y > a.x - a.y ? b : a)); return above(m.x + m.length / 2, m.y); }
  if (id === "nose" && t.nose && t.nose.length) { const low = t.nose.reduce((a, b) => (b[1] < a[1] ? b : a)); return above(low[0], low[1] * 0.75); }
  if (id === "body") { const x = Math.min(...s.body.map(p => p[0])), z = Math.max(...s.body.map(p => p[1])); return beside(x + 8, z - 4); }
  if (id === "tyres" && s.wheels && s.wheels.length) { const w = s.wheels.reduce((a, b) => (b.x < a.x ? b : a)); return beside(w.x, w.z - w.radius * 0.6); }
  return null;
}

const Label = ({ p }) => html`<button class=${`partbtn ${p.changed || p.rows.some(r => r.changed || (r.source && r.source.kind === "changed")) ? "chg" : ""} ${p.rows.some(r => r.error) ? "bad" : ""}`}
  aria-pressed=${part.value === p.id ? "true" : "false"} onClick=${() => choose(p.id)}><b>${p.words}</b> ${p.value || ""}</button>`;

export function Drawing({ robot }) {
  const d = robot.drawing;
  const parts = [...robot.parts].sort((a, b) => (order.indexOf(a.id) + 1 || 99) - (order.indexOf(b.id) + 1 || 99));
  const tone = robot.id === "b" ? "d1" : "d0";
  if (phone.value) {
    // a chosen part leaves the room to its sliders
    const one = parts.find(p => p.id === part.value);
    if (one) return html`<div class=${`draw phonedraw folded ${tone}`} role="group" aria-label=${`${robot.name}; chosen part`}><div class="parts"><${Label} p=${one} /><button class="partbtn" onClick=${() => { part.value = ""; }}>all parts</button></div></div>`;
    const f = frame(d, 126, 148, false);
    return html`<div class=${`draw phonedraw ${tone}`} role="group" aria-label=${`${robot.name}; choose a part to see its values`}>
      <svg width="134" height="148" viewBox="0 0 134 148" role="img" aria-label=${`${robot.name} from above, to scale`}><${Above} d=${d} f=${f} left=${3} middle=${74} /></svg>
      <div class="parts">${parts.map(p => html`<${Label} key=${p.id} p=${p} />`)}</div></div>`;
  }

  // six labels are 160 high; more of them make the drawing taller
  const step = 26.4, height = Math.max(160, parts.length * step + 4);
  const f = frame(d, 150, Math.min(height, 176), true);
  const place = { left: 3, middle: height / 2, side: 330, ground: height * 0.69 };
  const wide = (f.sx1 - f.sx0) * f.scale;
  place.side = 326 + (158 - wide) / 2;
  const leads = parts.map((p, i) => ({ p, y: 2 + i * step + 11.5, to: anchor(p.id, d, f, place) })).filter(l => l.to);
  return html`<div class=${`draw ${tone}`} role="group" aria-label=${`${robot.name}; choose a part to see its values`} style=${{ height: `${height}px` }}>
    <svg width="488" height=${height} viewBox=${`0 0 488 ${height}`} role="img" aria-label=${`${robot.name} from above and from its right, to scale`}>
      <${Above} d=${d} f=${f} left=${place.left} middle=${place.middle} />
      <${Beside} d=${d} f=${f} left=${place.side} ground=${place.ground} />
      <text class="cap" x="405" y=${place.ground + 17} text-anchor="middle">from its right, to scale;</text>
      <text class="cap" x="405" y=${place.ground + 32} text-anchor="middle">dot: balance point</text>
      ${leads.map(l => html`<g class="lead"><path d=${`M${l.to[2] === "l" ? 168 : 304} ${l.y}L${l.to[0].toFixed(1)} ${l.to[1].toFixed(1)}`} /><circle cx=${l.to[0]} cy=${l.to[1]} r="2.5" /></g>`)}
    </svg>
    <div class="parts">${parts.map((p, i) => html`<div key=${p.id} style=${{ top: `${2 + i * step}px` }}><${Label} p=${p} /></div>`)}</div></div>`;
}
