// Tap a part of the drawing to go to its questions; tap a measure to type its number.

function go(ident) {
  const form = document.getElementById(ident);
  if (!form) return false;
  form.closest("details.more")?.setAttribute("open", "");
  form.closest("details").open = true;
  const field = form.querySelector("input[type=text], input[type=radio]:checked, input[type=radio]");
  field.scrollIntoView({ block: "center" });
  field.focus({ preventScroll: true });
  if (field.type === "text") field.select();
  return true;
}

export function startDrawing() {
  document.addEventListener("click", (event) => {
    const next = event.target.closest?.("a[data-opens]");
    const first = next && document.querySelector(`#${CSS.escape(next.dataset.opens)} form.ask`);
    if (first && go(first.id)) event.preventDefault();
  });
  document.addEventListener("click", (event) => {
    const touched = event.target.closest?.('.drawing a[href^="#ask-"]');
    if (touched && go(touched.getAttribute("href").slice(1))) event.preventDefault();
  });
}
