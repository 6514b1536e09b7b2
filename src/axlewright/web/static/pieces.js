// Putting fresh pieces of a page in the place of old ones, without taking away what is being typed.

const shown = new Map(); // id → HTML of a piece as the server last gave it

let swapping = false;

// A browser may report a change of a field that is only being taken off the page.
export const isSwapping = () => swapping;

export function remember() {
  for (const piece of document.querySelectorAll("[data-piece]")) shown.set(piece.id, piece.outerHTML);
}

function typing(piece) {
  return [...piece.querySelectorAll("input[type=text], textarea")].filter(
    (field) => field.value !== field.defaultValue && field.value.trim() !== "");
}

function replaced(old, fresh, settled) {
  const kept = new Map(typing(old).map((field) => [field.id, field.value]));
  const focus = old.contains(document.activeElement) ? document.activeElement : null;
  const span = focus && focus.type === "text" ? [focus.selectionStart, focus.selectionEnd] : null;
  if (old.tagName === "DETAILS") fresh.open = old.open;
  for (const inner of old.querySelectorAll("details[open][id]")) {
    const twin = fresh.querySelector(`#${CSS.escape(inner.id)}`);
    if (twin) twin.open = true;
  }
  swapping = true;
  old.replaceWith(fresh);
  swapping = false;
  for (const [id, value] of kept) {
    const field = document.getElementById(id);
    if (!field || settled.has(id) || field.value === value) continue;
    if (field.value !== field.dataset.was) elsewhere(field);
    field.value = value;
  }
  if (!focus || !focus.id) return;
  const again = document.getElementById(focus.id);
  if (!again || document.activeElement === again) return;
  again.focus({ preventScroll: true });
  if (span && again.type === "text") again.setSelectionRange(...span);
}

function elsewhere(field) {
  const note = document.createElement("p");
  note.className = "elsewhere";
  note.textContent = field.defaultValue
    ? `Said meanwhile on another device: ${field.defaultValue}. What you say now takes its place.`
    : "Taken out meanwhile on another device.";
  field.closest("form").querySelector(".said").prepend(note);
}

// `settled` holds ids of fields whose text has just been taken or refused by the server.
export function place(html, settled = new Set()) {
  const page = new DOMParser().parseFromString(html, "text/html");
  const changed = [];
  const holder = document.getElementById("holder");
  const fuller = page.getElementById("holder");
  if (holder && fuller && !document.getElementById("rest") && page.getElementById("rest")) {
    for (const piece of fuller.querySelectorAll("[data-piece]")) shown.set(piece.id, piece.outerHTML);
    holder.replaceWith(document.adoptNode(fuller));
  }
  for (const fresh of page.querySelectorAll("[data-piece]")) {
    const old = document.getElementById(fresh.id);
    if (!old) { document.getElementById("rest")?.append(document.adoptNode(fresh)); continue; }
    if (shown.get(fresh.id) === fresh.outerHTML) continue;
    shown.set(fresh.id, fresh.outerHTML);
    const had = new Map([...old.querySelectorAll("input[type=text]")].map((f) => [f.id, f.defaultValue]));
    const node = document.adoptNode(fresh);
    for (const field of node.querySelectorAll("input[type=text]")) field.dataset.was = had.get(field.id) ?? "";
    replaced(old, node, settled);
    changed.push(fresh.id);
  }
  for (const name of ["at"]) {
    const mark = page.getElementById("axle")?.dataset[name];
    if (mark) document.getElementById("axle").dataset[name] = mark;
  }
  document.dispatchEvent(new CustomEvent("bay:placed", { detail: changed }));
  return changed;
}
