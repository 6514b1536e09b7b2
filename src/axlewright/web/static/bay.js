// The bay's own script: everything here is an ease; every form works without it.
import { startQueue } from "./queue.js";
import { startLive } from "./live.js";
import { startDrawing } from "./drawing.js";

document.documentElement.classList.add("scripted");

const dialog = document.getElementById("meaning");
document.addEventListener("click", (event) => {
  const term = event.target.closest("a.term[data-meaning]");
  if (!term || !dialog.showPopover) return;
  event.preventDefault();
  const head = document.createElement("b");
  head.textContent = term.textContent;
  const said = document.createElement("p");
  said.textContent = term.dataset.meaning;
  const shut = document.createElement("button");
  shut.textContent = "Close";
  shut.addEventListener("click", () => { dialog.hidePopover(); term.focus(); });
  dialog.replaceChildren(head, said, shut);
  dialog.showPopover();
  shut.focus();
});

// The code on the laptop's page carries the phrase behind a #, which stays in this browser.
const phrase = document.getElementById("phrase");
if (phrase && location.hash.length > 1) {
  phrase.value = decodeURIComponent(location.hash.slice(1)).replaceAll("-", " ");
  history.replaceState(null, "", location.pathname);
}

startQueue();
startLive();
startDrawing();
