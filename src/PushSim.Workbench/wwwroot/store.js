// What the page knows: signals that the server's events fill. Nothing is decided here; values, words and answers are the server's.
import { signal, computed, batch } from "./html.js";
import { get, post, Refusal } from "./api.js";
import { fileName } from "./words.js";

export const view = signal("wait");          // "wait", "start", "work"
export const home = signal(null);
export const state = signal(null);
export const answer = signal(null);
export const strips = signal({});            // by key of the row
export const odds = signal(null);
export const closer = signal("");
export const trace = signal(null);
export const outside = signal(null);         // a file that changed outside
export const conflict = signal(null);        // both texts, when both changed
export const notice = signal(null);          // { message, help, bad }
export const link = signal("open");          // "open", "lost", "ended"
export const tab = signal("a");              // robot id, "scene" or "bench"
export const part = signal("");              // "" = what matters most, "*" = all values
export const local = signal({});             // by key: what the hand has set and the server has not said yet
export const phone = signal(false);
export const spoken = signal("");            // for the live region
export const time = signal(0);               // moment shown on stage and curves [s]
export const playing = signal(false);
export const speed = signal(1);

export const valuesNumber = signal(0);         // the change since which no value and no mode is another

export const robots = computed(() => (state.value ? state.value.robots : []));
export const endTime = computed(() => {
  const replay = answer.value && answer.value.replay;
  return replay && replay.t && replay.t.length ? replay.t[replay.t.length - 1] / 1e5 : 0;
});

// every row once, by its key
export const rows = computed(() => {
  const all = {};
  if (!state.value) return all;
  for (const r of state.value.robots) for (const p of r.parts) for (const row of p.rows) all[row.key] = { row, robot: r.id, part: p };
  for (const p of state.value.scene_parts || []) for (const row of p.rows) all[row.key] = { row, robot: "scene", part: p };
  return all;
});

export const faulty = computed(() => Object.values(rows.value).map(r => r.row).filter(r => r.error));

// an answer is old while a value cannot be used, or while a newer one is asked for and late
export const isOld = computed(() => Boolean(answer.value && (answer.value.old || faulty.value.length > 0)));

export function say(error) {
  if (error instanceof Refusal && error.status === 0) lost();
  notice.value = { message: error.message || String(error), help: error.help || "", bad: true };
}

export const tell = message => { notice.value = { message, help: "", bad: false }; };

// Strips are asked for of the rows that can be seen, once the eye rests on them.
const seen = new Set();
let asking = 0, asked = "";
const observer = new IntersectionObserver(list => {
  for (const e of list) {
    if (e.isIntersecting) seen.add(e.target.dataset.row);
    else seen.delete(e.target.dataset.row);
  }

  clearTimeout(asking);
  asking = setTimeout(() => askStrips(false), 120);
}, { rootMargin: "80px" });

function askStrips(again) {
  // from the top down: the server takes them in this order
  const keys = [...document.querySelectorAll("[data-row]")].map(e => e.dataset.row).filter(k => seen.has(k));
  if (!again && keys.join() === asked) return;
  asked = keys.join();
  if (view.value === "work" && link.value === "open") post("/api/strips", { keys }).catch(() => { asked = ""; });
}

export function watch(element, key) {
  element.dataset.row = key;
  observer.observe(element);
  return () => { observer.unobserve(element); seen.delete(key); };
}

let stream = null;
let young = true;
let fresh = true;                            // the first events of a stream are taken whatever their number
let retry = 0;
let speaking = 0;
let signature = "";

function lost() {
  if (link.value === "open") link.value = "lost";
}

// A verdict is spoken once it has stood still for half a second.
function speak(text) {
  clearTimeout(speaking);
  speaking = setTimeout(() => { spoken.value = text; }, 500);
}

function takeState(s) {
  if (!s || !s.file) { view.value = "start"; return; }
  const old = state.value;
  if (old && !fresh && s.number < old.number) return;
  fresh = false;
  batch(() => {
    if (!old || old.file !== s.file) {
      strips.value = {};
      odds.value = null;
      closer.value = "";
      if (!old || !s.robots.some(r => r.id === tab.value)) tab.value = s.robots.length ? (s.robots.find(r => r.yours) || s.robots[0]).id : "scene";
      part.value = "";
    }

    const values = [s.file, s.mode, ...s.robots.flatMap(r => r.parts), ...(s.scene_parts || [])].map(p => (p.rows ? p.rows.map(r => `${r.text}~${r.tolerance ? r.tolerance.text : ""}`).join() : p)).join("|");
    if (values !== signature) { signature = values; valuesNumber.value = s.number; }
    state.value = s;
    view.value = "work";
    if (s.outside) takeOutside(s.outside);
    // what the server has taken over needs no memory here
    const left = {};
    for (const [key, mine] of Object.entries(local.value)) if (mine.held || !mine.number || mine.number > s.number) left[key] = mine;
    local.value = left;
  });
  document.title = `${s.title || fileName(s.file)} - PushSim`;
}

function takeAnswer(a) {
  if (answer.value && !young && a.number < answer.value.number) return;
  young = false;
  batch(() => {
    const before = endTime.value;
    const stood = time.value < before - 1e-6 && before > 0;
    answer.value = a;
    const end = endTime.value;
    if (!playing.value) time.value = stood ? Math.min(time.value, end) : end;
  });
  speak(a.sentence);
}

function takeStrip(s) {
  const old = strips.value[s.key];
  if (old && s.number < old.number) return;
  strips.value = { ...strips.value, [s.key]: s };
}

function takeOutside(o) {
  if (o.both) conflict.value = { ...o, from: "outside" };
  else outside.value = o;
}

const takers = {
  state: takeState,
  answer: takeAnswer,
  strip: takeStrip,
  odds: o => { if (!odds.value || o.number >= odds.value.number) odds.value = o; },
  closer: c => { closer.value = c.words; },
  problem: p => { if (!p.key) notice.value = { message: p.message, help: p.help || "", bad: true }; },
  trace: t => { trace.value = t; },
  outside: takeOutside,
};

// Listens until the page closes. A lost stream is told and opened again, sooner at first.
export function listen(flush) {
  if (stream) stream.close();
  stream = new EventSource("/api/events");
  stream.onopen = () => {
    retry = 0;
    fresh = young = true;
    if (link.value !== "open") {
      link.value = "open";
      refresh().then(() => { flush(); askStrips(true); }, () => {});
    }
  };
  stream.onerror = () => {
    lost();
    stream.close();
    retry = Math.min(retry + 1, 6);
    setTimeout(() => again(flush), 250 * 2 ** (retry - 1));
  };
  for (const [name, take] of Object.entries(takers)) stream.addEventListener(name, e => take(JSON.parse(e.data)));
}

// another PushSim at the same port does not know this page: then trying again is of no use
async function again(flush) {
  try {
    await get("/api/state");
  } catch (e) {
    if (e.status === 401 || e.status === 403) { link.value = "ended"; return; }
  }

  listen(flush);
}

export async function refresh() {
  try {
    takeState(await get("/api/state"));
  } catch (e) {
    if (e.status === 404) view.value = "start";
    else throw e;
  }
}

export async function showStart() {
  try {
    home.value = await get("/api/home");
    view.value = "start";
  } catch (e) { say(e); }
}

export async function open(path) {
  try {
    state.value = null;
    answer.value = null;
    takeState(await post("/api/open", { path }));
    scrollTo(0, 0);
  } catch (e) { say(e); showStart(); }
}

export async function create(list) {
  const s = await post("/api/new", { rows: list });
  state.value = null;
  answer.value = null;
  takeState(s);
  scrollTo(0, 0);
}

// A call whose result comes over the stream.
export async function act(path, body) {
  try { return await post(path, body); } catch (e) { say(e); return null; }
}

export async function save(over = false) {
  try {
    const done = await post("/api/save", over ? { over: true } : {});
    conflict.value = null;
    tell(done.saved.length ? `Saved: ${done.saved.map(fileName).join(", ")}.` : "Nothing had changed.");
    spoken.value = "Saved.";
    return true;
  } catch (e) {
    if (e.status === 409 && e.body && e.body.mine !== undefined) conflict.value = { ...e.body, from: "save" };
    else say(e);
    return false;
  }
}

export async function reload() {
  conflict.value = null;
  if (await act("/api/reload")) tell("The file is read again.");
}

export async function makePage() {
  const done = await act("/api/page");
  if (done) notice.value = { message: `The page is written: ${done.path}`, help: "", bad: false, url: done.url || "" };
}
