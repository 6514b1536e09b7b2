// The axle follows the thumb: one pose on its way at a time, the newest next.
const form = document.getElementById("move");

let asking = false; // a pose is on its way
let next = false;   // something moved since

function place(html) {
  const made = document.createElement("template");
  made.innerHTML = html;
  const fresh = made.content.getElementById("posed");
  if (fresh) document.getElementById("posed").replaceWith(fresh);
  const said = document.querySelector(".pose-lines")?.firstElementChild?.textContent ?? "";
  for (const slider of form.querySelectorAll("input[type=range]")) slider.setAttribute("aria-valuetext", said);
}

async function ask() {
  if (asking) { next = true; return; }
  asking = true;
  next = false;
  const query = new URLSearchParams(new FormData(form));
  try {
    const answer = await fetch(`${form.dataset.now}?${query}`, { headers: { "X-Fragment": "1" } });
    if (answer.ok) place(await answer.text());
  } catch { /* the next move asks again */ }
  asking = false;
  if (next) { ask(); return; }
  history.replaceState(null, "", `${location.pathname}?${query}`);
}

if (form) {
  form.addEventListener("input", ask);
  form.addEventListener("submit", (event) => { event.preventDefault(); ask(); });
  document.addEventListener("click", (event) => {
    const still = event.target.closest?.("a[data-pose]");
    if (!still) return;
    event.preventDefault();
    for (const [name, value] of new URLSearchParams(still.dataset.pose)) {
      const slider = form.elements.namedItem(name);
      if (slider) slider.value = value;
    }
    ask();
  });
}
