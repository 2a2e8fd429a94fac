// Nothing here is needed: without scripts the same forms go to the same places.
// After a form came back with problems in place of a whole page, the summary takes the focus.
document.addEventListener("htmx:afterSettle", function () {
  var problems = document.getElementById("problems");
  if (problems) {
    problems.focus();
    problems.scrollIntoView({ block: "start" });
  }
});
