// Following row by row: the row that is next stands large at the foot of the page and is lit in the chart.
function Bench(place) {
  var article = place.article, panel = article.querySelector(".bench"), next = panel.querySelector("[data-do=next]"), lock = null;

  function withPiece(what) { return article.querySelector(".pieces") ? _("{what}, piece {number}", {what: what, number: place.piece}) : what; }

  function stayAwake() {
    if (navigator.wakeLock && !panel.hidden && document.visibilityState === "visible") {
      navigator.wakeLock.request("screen").then(function (given) { lock = given; }, function () { /* The browser may say no. */ });
    }
  }

  function chips(line) {
    var list = panel.querySelector(".pick");
    list.textContent = "";
    (line.dataset.pick || "").split(" ").filter(Boolean).forEach(function (run) {
      var key = run.slice(-1), chip = document.createElement("li"), bead = document.createElement("b");
      bead.textContent = key;
      bead.style.cssText = "background:var(--b-" + key + ");color:var(--i-" + key + ")";
      chip.append(run.slice(0, -1), bead);
      list.append(chip);
    });
  }

  this.show = function () {
    if (panel.hidden) { return; }
    var line = place.current(), words = line && line.querySelector(".row-words, .strand-words").cloneNode(true);
    next.disabled = !line;
    panel.querySelector(".pick").hidden = !line;
    if (!line) {
      panel.querySelector(".where").textContent = withPiece(_("All done"));
      panel.querySelector(".says").textContent = _("Every row and strand of this piece is marked.");
      return;
    }
    var name = words.querySelector("b").textContent, change = line.querySelector(".change");
    words.querySelector("b").remove();
    panel.querySelector(".where").textContent = withPiece(name);
    panel.querySelector(".says").textContent = words.textContent.replace(/^[\s,]+/, "") + (change ? ". " + change.textContent : "");
    chips(line);
    reveal(line);
  };

  function reveal(line) {
    var calm = matchMedia("(prefers-reduced-motion: reduce)").matches;
    var figure = line.closest(".work").querySelector("figure"), part = chartParts(line)[0];
    if (!part) { return; }
    var box = part.getBoundingClientRect(), pane = figure.querySelector(".pane"), frame = pane.getBoundingClientRect();
    pane.scrollBy({top: (box.top + box.bottom - frame.top - frame.bottom) / 2, left: (box.left + box.right - frame.left - frame.right) / 2});
    box = part.getBoundingClientRect();
    var room = innerHeight - panel.offsetHeight;
    if (box.top < 10 || box.bottom > room - 10) { scrollBy({top: (box.top + box.bottom) / 2 - room / 2, behavior: calm ? "auto" : "smooth"}); }
  }

  this.act = function (name) {
    var lines = place.lines(), now = place.current(), last = lines[(now ? lines.indexOf(now) : lines.length) - 1];
    if (name === "begin") { panel.hidden = false; article.classList.add("at-work"); stayAwake(); next.focus({preventScroll: true}); }
    if (name === "end") {
      panel.hidden = true;
      article.classList.remove("at-work");
      if (lock) { lock.release(); lock = null; }
      article.querySelector("[data-do=begin]").focus();
    }
    if (name === "next" && now) { place.mark(now, true); }
    if (name === "back" && last) { place.mark(last, false); }
  };

  article.addEventListener("keydown", function (event) {
    if (panel.hidden || event.target.closest("select, .pane, input[type=radio]")) { return; }
    var name = {ArrowRight: "next", ArrowLeft: "back", Escape: "end"}[event.key];
    if (name) { event.preventDefault(); panel.querySelector("[data-do=" + name + "]").click(); }
  });
  document.addEventListener("visibilitychange", stayAwake);
}
