// Tap a part of the drawing to go to its questions; tap a measure to type its number.

function go(path) {
  const form = document.querySelector(`form[data-path="${CSS.escape(path)}"]`);
  if (!form) return false;
  form.closest("details").open = true;
  const field = form.querySelector("input[type=text], input[type=radio]:checked, input[type=radio]");
  field.scrollIntoView({ block: "center" });
  field.focus({ preventScroll: true });
  if (field.type === "text") field.select();
  return true;
}

export function startDrawing() {
  document.addEventListener("click", (event) => {
    const touched = event.target.closest?.("[data-field], [data-asks]");
    if (!touched || !touched.closest(".drawing")) return;
    if (go(touched.dataset.field ?? touched.dataset.asks)) event.preventDefault();
  });
  document.addEventListener("keydown", (event) => {
    const touched = event.target.closest?.("[data-field], [data-asks]");
    if (event.key === "Enter" && touched?.closest(".drawing")) go(touched.dataset.field ?? touched.dataset.asks);
  });
}
