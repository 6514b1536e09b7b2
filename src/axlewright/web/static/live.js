// Two devices at one axle: what is said on the other shows here, pushed, or asked for every few
// seconds where pushing does not come through.
import { place } from "./pieces.js";
import { busy } from "./queue.js";

const ASKED_EVERY = 3000; // ms

let source = null;

async function look() {
  const axle = document.getElementById("axle");
  if (!axle || document.hidden) return;
  const at = axle.dataset.at;
  try {
    const answer = await fetch(`/axle/${axle.dataset.axle}/pieces?after=${at}`, {
      headers: { "X-Fragment": "1" }, signal: AbortSignal.timeout(8000),
    });
    if (answer.status === 200) place(await answer.text());
  } catch { /* the next look will find it */ }
}

// What this device has just said itself comes back with its own answer: no need to ask for it.
function soon(number) {
  const axle = document.getElementById("axle");
  if (number <= Number(axle.dataset.at)) return;
  if (busy()) setTimeout(soon, 200, number);
  else look();
}

function listen() {
  const axle = document.getElementById("axle");
  if (!axle || !window.EventSource) return;
  source?.close();
  source = new EventSource(`/axle/${axle.dataset.axle}/events?after=${axle.dataset.at}`);
  source.addEventListener("entry", (event) => soon(Number(event.data)));
}

export function startLive() {
  if (!document.getElementById("axle")) return;
  listen();
  setInterval(() => { if (!source || source.readyState !== EventSource.OPEN) { look(); if (source?.readyState === EventSource.CLOSED) listen(); } }, ASKED_EVERY);
  document.addEventListener("visibilitychange", () => { if (!document.hidden) { look(); listen(); } });
  window.addEventListener("pagehide", () => source?.close());
}
