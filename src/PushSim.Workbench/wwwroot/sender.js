// Sends what hands change. At most one change a frame, at most one under way, and of each value only the last one waits.
import { post } from "./api.js";
import { link, local, state, say } from "./store.js";

const waiting = new Map();
let underWay = false;
let isFrameUsed = false;
export const tally = { sent: 0, most: 0 };

export function change(key, text, { drag = false, value = null } = {}) {
  // delete first: the order of a map is the order of the hands
  waiting.delete(key);
  waiting.set(key, { key, text, drag });
  local.value = { ...local.value, [key]: { text, value, held: drag, number: 0 } };
  ask();
}

export function flush() { ask(); }

function ask() {
  if (isFrameUsed || underWay || waiting.size === 0) return;
  isFrameUsed = true;
  requestAnimationFrame(() => { isFrameUsed = false; ask(); });
  send();
}

async function send() {
  if (underWay || waiting.size === 0 || link.value !== "open") return;
  const [key, next] = waiting.entries().next().value;
  waiting.delete(key);
  underWay = true;
  tally.sent++;
  tally.most = Math.max(tally.most, waiting.size);
  try {
    const { number } = await post("/api/change", next);
    const mine = local.value[key], held = next.drag && mine && mine.held;
    if (mine && mine.text === next.text && !waiting.has(key)) {
      // the stream may have been quicker than this answer
      if (!held && state.value && state.value.number >= number) forget(key);
      else local.value = { ...local.value, [key]: { ...mine, held, number } };
    }
  } catch (e) {
    // without a server the last value waits for its return
    if (e.status === 0 && !waiting.has(key)) waiting.set(key, next);
    else if (e.status !== 0) forget(key);
    say(e);
  }

  underWay = false;
  ask();
}

function forget(key) {
  const left = { ...local.value };
  delete left[key];
  local.value = left;
}
