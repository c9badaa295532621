// Keeps the ticks of a pattern in the reader's own browser, so that her place is still there after a break.
(function () {
  "use strict";
  var pattern = document.querySelector("article.pattern");
  var boxes = pattern ? pattern.querySelectorAll("input[type=checkbox]") : [];
  var name = pattern ? "booklet " + pattern.id + " " + pattern.querySelector("h1").dataset.mark : "";
  function kept() {
    try { return JSON.parse(localStorage.getItem(name)) || {}; } catch (error) { return {}; }
  }
  var ticks = kept();
  boxes.forEach(function (box) {
    box.checked = ticks[box.id] === true;
    box.addEventListener("change", function () {
      ticks[box.id] = box.checked;
      try { localStorage.setItem(name, JSON.stringify(ticks)); } catch (error) { /* A private window keeps nothing. */ }
    });
  });
}());
