// The answer follows the thumb: one question on its way at a time, the newest value next; the
// spans follow when the thumb rests.
const form = document.getElementById("try");
const keep = document.getElementById("keep");
const REST = 300; // ms

let asking = null; // the question on its way
let next = false;  // something moved since
let resting = 0;
let asked = 0;     // questions since the thumb came down

function differs(field, was) {
  if (field.type !== "number") return field.value !== was;
  return field.value.trim() !== "" && Number(field.value) !== Number(was);
}

function said() {
  const values = new URLSearchParams();
  for (const lever of form.querySelectorAll(".lever")) {
    const field = lever.querySelector("[name]");
    const other = differs(field, lever.dataset.was);
    if (other) values.set(field.name, field.value);
    lever.classList.toggle("moved", other);
  }
  return values;
}

function place(html) {
  const made = document.createElement("template");
  made.innerHTML = html;
  const fresh = made.content.getElementById("outcome");
  const old = document.getElementById("outcome");
  if (!fresh) return;
  const space = fresh.querySelector("figure");
  const drawn = old.querySelector("figure svg");
  if (space && drawn && !space.querySelector("svg")) space.prepend(drawn);
  old.replaceWith(fresh);
  brief();
}

// Where the outcome stands below the sliders, its gist stays in sight.
function brief() {
  const sticky = document.getElementById("sticky");
  const gist = document.querySelector("#outcome .brief, #outcome .clash");
  sticky.textContent = gist?.textContent ?? "";
  sticky.hidden = !gist;
}

async function ask(bands, slow = false) {
  if (asking && !(asking.bands && !bands)) { next = true; return; }
  asking?.stop.abort();
  const values = said();
  const mine = asking = { bands, stop: new AbortController() };
  next = false;
  const query = new URLSearchParams(values);
  if (bands) query.set("bands", "1");
  // The words come first; the drawing with every third of them, and when the thumb slows down.
  const bare = !bands && !slow && asked++ % 3 !== 2;
  if (bare) query.set("bare", "1");
  try {
    const answer = await fetch(`${form.dataset.now}?${query}`, {
      headers: { "X-Fragment": "1" }, signal: mine.stop.signal,
    });
    if (asking === mine && (answer.ok || answer.status === 422)) place(await answer.text());
  } catch { /* the next move asks again */ }
  if (asking !== mine) return;
  asking = null;
  if (next) { ask(false); return; }
  if (bare) { ask(false, true); return; }
  const tail = values.size ? `?${values}` : "";
  history.replaceState(null, "", `${location.pathname}${tail}${location.hash}`);
  if (!bands && values.size) {
    clearTimeout(resting);
    resting = setTimeout(() => ask(true), REST);
  }
}

function moved(event) {
  const field = event.target;
  if (field.type === "range") {
    const digits = field.step.split(".")[1]?.length ?? 0;
    document.getElementById(field.dataset.for).value = Number(field.value).toFixed(digits);
  } else {
    const slider = form.querySelector(`input[type=range][data-for="${CSS.escape(field.id)}"]`);
    if (slider) slider.value = field.value;
  }
  const values = said();
  keep.hidden = values.size === 0;
  for (const hidden of keep.querySelectorAll("input[type=hidden]")) {
    const named = form.elements.namedItem(hidden.name);
    if (named) hidden.value = named.value;
  }
  clearTimeout(resting);
  ask(false);
}

if (form) {
  form.addEventListener("input", moved);
  form.addEventListener("submit", (event) => { event.preventDefault(); ask(true); });
  said();
  brief();
  if (!keep.hidden) resting = setTimeout(() => ask(true), REST);
}
