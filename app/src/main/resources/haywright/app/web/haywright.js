// Nothing here is needed: without scripts the same forms go to the same places.
// After a form came back with problems in place of a whole page, the summary takes the focus.
document.addEventListener("htmx:afterSettle", function () {
  var problems = document.getElementById("problems");
  if (problems) {
    problems.focus();
    problems.scrollIntoView({ block: "start" });
  }
});
// A button saves its own form: what was typed in another one of the page would be gone.
document.addEventListener(
  "submit",
  function (event) {
    var changed = Array.from(document.forms).some(function (form) {
      return form !== event.target && Array.from(form.elements).some(isChanged);
    });
    if (changed && !window.confirm("You changed another form on this page, and this button does not save it. Go on?")) {
      event.preventDefault();
      event.stopImmediatePropagation();
    }
  },
  true
);
function isChanged(box) {
  if (box.type === "hidden" || box.type === "range") return false;
  if (box.type === "checkbox" || box.type === "radio") return box.checked !== box.defaultChecked;
  if (box.options) {
    var set = Array.from(box.options).find(function (o) { return o.defaultSelected; });
    return box.value !== (set || box.options[0] || {}).value;
  }
  return "defaultValue" in box && box.value !== box.defaultValue;
}
// Beside each box of a mix a slider that moves it: the box stays what is sent.
function addSlides(root) {
  root.querySelectorAll(".slides input.amount").forEach(function (box) {
    if (box.dataset.slid) return;
    box.dataset.slid = "yes";
    var slide = document.createElement("input");
    slide.type = "range";
    slide.className = "slide";
    slide.min = "0";
    slide.max = "40";
    slide.step = "0.5";
    slide.value = parseFloat(box.value) || 0;
    slide.setAttribute("aria-label", box.labels[0] ? box.labels[0].textContent.trim() + ", slider" : "Slider");
    slide.addEventListener("input", function () {
      box.value = slide.value === "0" ? "" : slide.value;
    });
    box.addEventListener("input", function () {
      slide.value = parseFloat(box.value) || 0;
    });
    box.closest(".box").appendChild(slide);
  });
}
document.addEventListener("DOMContentLoaded", function () { addSlides(document); });
