// Nothing here is needed: without scripts the same forms go to the same places.
// After a form came back with problems in place of a whole page, the summary takes the focus.
document.addEventListener("htmx:afterSettle", function () {
  var problems = document.getElementById("problems");
  if (problems) {
    problems.focus();
    problems.scrollIntoView({ block: "start" });
  }
});
// A form that was not let in, or did not arrive, stays as it is typed: what became of it is said above it.
document.addEventListener("htmx:beforeSwap", function (event) {
  var status = event.detail.xhr.status;
  if (event.detail.requestConfig.verb === "get" || [400, 401, 403, 413, 421].indexOf(status) < 0) return;
  event.detail.shouldSwap = false;
  var said = new DOMParser().parseFromString(event.detail.xhr.responseText, "text/html");
  var title = said.querySelector("h1");
  var words = said.querySelector(".say") || said.querySelector("p");
  sayUnsent(title ? title.textContent : "Not saved", words ? words.textContent : "");
});
document.addEventListener("htmx:sendError", function (event) {
  if (event.detail.requestConfig.verb !== "get") sayUnsent("Not saved", "Haywright does not answer. Is it still running?");
});
function sayUnsent(title, words) {
  var box = document.getElementById("unsent") || document.createElement("div");
  box.id = "unsent";
  box.className = "problems";
  box.tabIndex = -1;
  box.setAttribute("role", "alert");
  box.replaceChildren();
  [["h2", title], ["p", words], ["p", "What you typed is still below. Keep this page open until it is saved."]].forEach(function (part) {
    var element = document.createElement(part[0]);
    element.textContent = part[1];
    box.appendChild(element);
  });
  document.getElementById("main").prepend(box);
  box.focus();
  box.scrollIntoView({ block: "start" });
}
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
    slide.setAttribute("aria-label", box.labels[0] ? box.labels[0].textContent.trim() + ", slider" : "Slider");
    // In another unit, or beyond its end, it would say another amount than the box: then it is left out.
    function follow() {
      slide.value = Number(box.value) || 0;
      slide.hidden = box.value.trim() !== "" && Number(slide.value) !== Math.round(Number(box.value) * 2) / 2;
    }
    slide.addEventListener("input", function () {
      box.value = slide.value === "0" ? "" : slide.value;
    });
    box.addEventListener("input", follow);
    box.closest(".box").appendChild(slide);
    follow();
  });
}
document.addEventListener("DOMContentLoaded", function () { addSlides(document); });
