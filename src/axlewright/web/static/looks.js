// A look that has a photo with it: sent whole, again and again until the bay has kept it. Looks
// without one wait with the other answers, through a closed page too.
import { place } from "./pieces.js";

const WAITS = [300, 700, 1500, 3000, 5000]; // ms between tries
const MOST = 16 * 1024 * 1024; // bytes, as the bay takes them in
const line = document.getElementById("unkept");
let waiting = 0;

function tell(text) {
  line.hidden = !text;
  line.textContent = text;
}

async function kept(form, data, tries = 0) {
  let answer, html;
  try {
    answer = await fetch(new URL(form.action).pathname, {
      method: "POST", headers: { "X-Fragment": "1" }, body: data, signal: AbortSignal.timeout(60000),
    });
    html = await answer.text();
  } catch { answer = null; }
  if (!answer || answer.status >= 500) {
    tell(`Not yet kept: ${waiting === 1 ? "1 photo" : `${waiting} photos`} with its look. Leave this page open; it goes as soon as the bay answers.`);
    await new Promise((done) => setTimeout(done, WAITS[Math.min(tries, WAITS.length - 1)]));
    return kept(form, data, tries + 1);
  }
  if (answer.status === 403 || answer.status === 413) {
    tell(answer.status === 413 ? "Not kept: the photo is larger than 16 MB. Take it smaller." : "This page has grown old. Load it again and take the look once more.");
    return true;
  }
  tell("");
  if (answer.ok && !answer.headers.has("X-Not-Kept")) form.reset();
  place(html);
  return true;
}

document.addEventListener("submit", async (event) => {
  const form = event.target;
  const photo = form.querySelector("input[type=file]");
  if (!form.matches("form[data-say]") || !photo?.files.length) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  if (photo.files[0].size > MOST) return tell("Not kept: the photo is larger than 16 MB. Take it smaller.");
  const data = new FormData(form, event.submitter);
  data.append("key", crypto.getRandomValues(new Uint32Array(2)).join("-"));
  form.classList.add("busy");
  waiting += 1;
  await kept(form, data);
  waiting -= 1;
  form.classList.remove("busy");
}, { capture: true });

window.addEventListener("beforeunload", (event) => { if (waiting) event.preventDefault(); });
