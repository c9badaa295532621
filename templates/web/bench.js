// Following row by row: the row that is next stands large at the foot of the page and is lit in the chart.
function Bench(place) {
  var article = place.article, panel = one(article, ".bench"), next = one(panel, "[data-do=next]"), lock = null;

  function withPiece(what) { return one(article, ".pieces") ? _("{what}, piece {number}", {what, number: place.piece}) : what; }

  function stayAwake() {
    if (navigator.wakeLock && !panel.hidden && !document.hidden) {
      navigator.wakeLock.request("screen").then(given => { lock = given; }, () => { /* The browser may say no. */ });
    }
  }

  function chips(line) {
    var list = one(panel, ".pick");
    list.textContent = "";
    (line.dataset.pick || "").split(" ").filter(Boolean).forEach(run => {
      var key = run.slice(-1), chip = document.createElement("li"), bead = document.createElement("b");
      bead.textContent = key;
      bead.style.cssText = "background:var(--b-" + key + ");color:var(--i-" + key + ")";
      chip.append(run.slice(0, -1), bead);
      list.append(chip);
    });
  }

  this.show = function () {
    if (panel.hidden) { return; }
    var line = place.current(), name = _("All done"), says = _("Every row and strand of this piece is marked.");
    next.disabled = !line;
    one(panel, ".pick").hidden = !line;
    if (line) {
      var words = one(line, ".row-words, .strand-words"), change = one(line, ".change");
      name = one(words, "b").textContent;
      says = words.textContent.replace(name, "").replace(/^[\s,]+/, "") + (change ? ". " + change.textContent : "");
      chips(line);
      reveal(line);
    }
    one(panel, ".where").textContent = withPiece(name);
    one(panel, ".says").textContent = says;
  };

  function reveal(line) {
    var figure = line.closest(".work").querySelector("figure"), part = chartParts(line)[0];
    if (!part) { return; }
    var box = part.getBoundingClientRect(), pane = one(figure, ".pane"), frame = pane.getBoundingClientRect();
    pane.scrollBy({top: (box.top + box.bottom - frame.top - frame.bottom) / 2, left: (box.left + box.right - frame.left - frame.right) / 2});
    box = part.getBoundingClientRect();
    var room = innerHeight - panel.offsetHeight;
    if (box.top < 10 || box.bottom > room - 10) { scrollBy({top: (box.top + box.bottom) / 2 - room / 2, behavior: isCalm() ? "auto" : "smooth"}); }
  }

  this.act = function (name) {
    var lines = place.lines(), now = place.current(), last = lines[(now ? lines.indexOf(now) : lines.length) - 1];
    if (name === "begin") { panel.hidden = false; article.classList.add("at-work"); stayAwake(); next.focus({preventScroll: true}); }
    if (name === "end") {
      panel.hidden = true;
      article.classList.remove("at-work");
      if (lock) { lock.release(); lock = null; }
      one(article, "[data-do=begin]").focus();
    }
    if (name === "next" && now) { place.mark(now, true); }
    if (name === "back" && last) { place.mark(last, false); }
  };

  on(article, "keydown", event => {
    if (panel.hidden || event.target.closest("select, .pane, input[type=radio]")) { return; }
    var name = {ArrowRight: "next", ArrowLeft: "back", Escape: "end"}[event.key];
    if (name) { event.preventDefault(); one(panel, "[data-do=" + name + "]").click(); }
  });
  on(document, "visibilitychange", stayAwake);
}
