// A part that is tapped in the drawing stands open where the tap leads.
function open() {
  const told = location.hash.length > 1 && document.getElementById(location.hash.slice(1));
  const part = told && told.closest("details.part");
  if (!part) return;
  part.open = true;
  part.querySelector("summary").focus({ preventScroll: true });
  part.scrollIntoView({ block: "center" });
}

window.addEventListener("hashchange", open);
open();
