// Answers wait here until the bay says that it has kept them: through a dead server, a dropped
// network, a sleeping phone and a closed page.
import { isSwapping, place, remember } from "./pieces.js";

const STORE = "bay-waiting";
const WAITS = [300, 700, 1500, 3000, 5000]; // ms between tries
let tries = 0;
let sending = false;
let timer = 0;
let grown = "";
const said = new Map(); // path → text as last said from this page

export const busy = () => sending;

const read = () => { try { return JSON.parse(localStorage.getItem(STORE)) ?? []; } catch { return []; } };
const write = (list) => { localStorage.setItem(STORE, JSON.stringify(list)); tell(list); };
const token = () => document.querySelector("meta[name=token]").content;

function tell(list) {
  const line = document.getElementById("unkept");
  const late = list.some((one) => one.tried) ? list : [];
  line.hidden = late.length === 0 && !grown;
  const many = late.length === 1 ? "1 answer" : `${late.length} answers`;
  const text = grown || `Not yet kept: ${many}. The bay does not answer; they go as soon as it does.`;
  if (!line.hidden && line.textContent !== text) line.textContent = text;
}

function say(form, button) {
  const data = new FormData(form, button);
  data.delete("token");
  const fields = [...data.entries()].filter(([, value]) => typeof value === "string");
  if (button?.name === "meant") fields.push(["text", button.value]);
  const target = new URL(form.action).pathname;
  const path = form.dataset.path ?? "";
  const one = { id: crypto.getRandomValues(new Uint32Array(2)).join("-"), target, path, fields, tried: 0 };
  // Enter and leaving the field both say it: once is enough.
  if (path && read().some((each) => each.path === path && each.target === target && JSON.stringify(each.fields) === JSON.stringify(fields))) return;
  if (path) said.set(path, fields.find(([name]) => name === "text")?.[1]);
  const list = read().filter((each) => !(path && each.path === path && each.target === target && !each.sent));
  write([...list, one]);
  flush();
}

async function flush() {
  clearTimeout(timer);
  if (sending) return;
  sending = true;
  try {
    for (let one = read()[0]; one; one = read()[0]) {
      if (!(await sent(one))) return;
      tries = 0;
    }
  } finally {
    sending = false;
    if (read().length) timer = setTimeout(flush, WAITS[Math.min(tries++, WAITS.length - 1)]);
  }
}

async function sent(one) {
  mark(one.id, { sent: true });
  let answer, html;
  try {
    answer = await fetch(one.target, {
      method: "POST",
      headers: { "X-Fragment": "1", "Content-Type": "application/x-www-form-urlencoded" },
      body: new URLSearchParams([...one.fields, ["key", one.id], ["token", token()]]),
      signal: AbortSignal.timeout(8000),
    });
    html = await answer.text();
  } catch {
    mark(one.id, { sent: false, tried: one.tried + 1 });
    return false;
  }
  if (answer.status >= 500) { mark(one.id, { sent: false, tried: one.tried + 1 }); return false; }
  if (answer.status === 403) {
    grown = "This page has grown old, or this device has not been let in. Load the page again; what you said waits here.";
    mark(one.id, { sent: false, tried: one.tried + 1 });
    return false;
  }
  grown = "";
  write(read().filter((each) => each.id !== one.id));
  const here = document.querySelector("[data-axle]");
  if (here && one.target.startsWith(`/axle/${here.dataset.axle}/`)) settle(one, html, answer.ok && !answer.headers.has("X-Not-Kept"));
  return true;
}

function mark(id, more) {
  write(read().map((one) => (one.id === id ? { ...one, ...more } : one)));
}

function settle(one, html, taken) {
  const form = document.querySelector(`form[data-path="${CSS.escape(one.path)}"]`);
  const field = form?.querySelector("input[type=text]");
  const text = one.fields.find(([name]) => name === "text")?.[1];
  const settled = new Set();
  // What was typed further while this answer was under way is not the server's to take away.
  if (field && (field.value === text || one.fields.some(([name]) => name === "how" || name === "meant"))) settled.add(field.id);
  if (taken && form?.matches("[data-fresh]")) form.reset();
  if (!one.path && taken) document.getElementById("list-one")?.reset();
  place(html, settled);
  const question = document.querySelector(`form[data-path="${CSS.escape(one.path)}"]`)?.closest("details");
  if (!question?.classList.contains("done") || question.classList.contains("odd")) return;
  const next = [...document.querySelectorAll("details.question:not(.done)")].find((each) => question.compareDocumentPosition(each) & Node.DOCUMENT_POSITION_FOLLOWING);
  if (next && !next.closest("#holder")) next.open = true;
}

function onward(form) {
  const all = [...document.querySelectorAll("form[data-path]")];
  const open = all.slice(all.indexOf(form) + 1).find((each) => {
    const field = each.querySelector("input[type=text]");
    return field ? field.value === "" : !each.querySelector("input:checked");
  });
  if (!open) return;
  open.closest("details").open = true;
  const field = open.querySelector("input[type=text], input[type=radio]");
  field.focus();
  field.scrollIntoView({ block: "center" });
}

export function startQueue() {
  remember();
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!form.matches("form[data-say]")) return;
    event.preventDefault();
    const field = form.querySelector("input[type=text]");
    const plain = !event.submitter?.name;
    if (form.dataset.path && plain && field && field.value.trim() === "") { field.focus(); return; }
    const asked = document.activeElement === field;
    say(form, event.submitter);
    if (asked && form.dataset.path && !form.matches("[data-fresh]")) onward(form);
  });
  document.addEventListener("change", (event) => {
    const form = event.target.closest("form[data-say][data-path]");
    if (!form || isSwapping() || !event.target.matches("input[name=text]")) return;
    const { type, value } = event.target;
    // Enter has said it already when the field is left.
    if (type === "text" && (value.trim() === "" || said.get(form.dataset.path) === value)) return;
    say(form, null);
  });
  window.addEventListener("online", flush);
  window.addEventListener("pageshow", flush);
  document.addEventListener("visibilitychange", () => { if (!document.hidden) { tries = 0; flush(); } });
  write(read().map((one) => ({ ...one, sent: false })));
  flush();
}
