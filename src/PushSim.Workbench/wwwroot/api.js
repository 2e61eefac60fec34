// Calls of the server. A refused call throws a Refusal with the server's words; a server that does not answer throws one with status 0.
export class Refusal extends Error {
  constructor(status, body) {
    super(body.message || `The server refused the call (${status}).`);
    this.status = status;
    this.help = body.help || "";
    this.body = body;
  }
}

async function call(path, init) {
  let answer;
  try {
    answer = await fetch(path, { credentials: "same-origin", cache: "no-store", ...init });
  } catch {
    throw new Refusal(0, { message: "PushSim does not answer.", help: "Is the window with pushsim open still there?" });
  }

  const text = await answer.text();
  let body = null;
  try { body = text ? JSON.parse(text) : null; } catch { body = { message: text.slice(0, 200) }; }
  if (!answer.ok) throw new Refusal(answer.status, body || {});
  return body;
}

export const get = path => call(path, {});
export const post = (path, body = {}) => call(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
export const postText = (path, text) => call(path, { method: "POST", headers: { "Content-Type": "text/csv" }, body: text });
