// While a choice is worked out: how far it is, and the choice itself once it stands.
const waiting = document.getElementById("waiting");

async function look() {
  try {
    const answer = await fetch(waiting.dataset.now, { headers: { Accept: "application/json" } });
    if (answer.ok) {
      const told = await answer.json();
      if (told.done) {
        location.reload();
        return;
      }
      document.getElementById("at").textContent = told.what || "It has just begun.";
      waiting.querySelector("progress").value = told.percent;
    }
  } catch {
    document.getElementById("at").textContent = "The bay does not answer just now; asked again soon.";
  }
  setTimeout(look, 1200);
}

if (waiting) setTimeout(look, 800);

// A row's link opens what it leads to.
function open() {
  const found = location.hash.startsWith("#row-") && document.getElementById(location.hash.slice(1));
  if (found) found.open = true;
}
addEventListener("hashchange", open);
open();
