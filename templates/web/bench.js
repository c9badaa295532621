// Following row by row: the row that is next stands large at the foot of the page and is lit in the chart.
function Bench(place) {
  var article = place.article, panel = one(article, ".bench"), next = one(panel, "[data-do=next]"), lock;

  function withPiece(what) { return one(article, ".pieces") ? _("{what}, piece {number}", {what, number: place.piece}) : what; }

  function stayAwake() {
    if (navigator.wakeLock && place.isOpen && !document.hidden) {
      navigator.wakeLock.request("screen").then(given => { lock = given; }, () => { /* The browser may say no. */ });
    }
  }

  function chips(line) {
    var list = one(panel, ".pick");
    list.textContent = "";
    line.dataset.pick.split(" ").forEach(run => {
      var key = run.slice(-1), chip = made("li"), bead = made("b");
      bead.textContent = key;
      bead.className = "k-" + key;
      chip.append(run.slice(0, -1), bead);
      list.append(chip);
    });
  }

  this.show = function () {
    panel.hidden = !place.isOpen;
    article.classList.toggle("at-work", place.isOpen);
    if (!place.isOpen || !article.offsetHeight) { return; }   // nothing is lit where another way to work it is shown
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
    var figure = one(line.closest(".work"), "figure"), part = chartParts(line)[0];
    if (!part) { return; }
    var box = part.getBoundingClientRect(), pane = one(figure, ".pane"), frame = pane.getBoundingClientRect();
    pane.scrollBy({top: (box.top + box.bottom - frame.top - frame.bottom) / 2, left: (box.left + box.right - frame.left - frame.right) / 2});
    box = part.getBoundingClientRect();
    var room = innerHeight - panel.offsetHeight;
    if (box.top < 10 || box.bottom > room - 10) { scrollBy({top: (box.top + box.bottom) / 2 - room / 2, behavior: isCalm() ? "auto" : "smooth"}); }
  }

  this.act = function (name) {
    var lines = place.lines(), now = place.current(), last = lines[(now ? lines.indexOf(now) : lines.length) - 1];
    if (name === "begin" || name === "end") {
      place.isOpen = name === "begin";
      place.save();
      this.show();
      (place.isOpen ? next : one(article, "[data-do=begin]")).focus({preventScroll: place.isOpen});
      if (place.isOpen) { stayAwake(); } else if (lock) { lock.release(); }
    }
    if (name === "next" && now) { place.mark(now, true); }
    if (name === "back" && last) { place.mark(last, false); }
  };

  on(article, "keydown", event => {
    if (panel.hidden || event.target.closest("select, .pane, input[type=radio]")) { return; }
    var name = {ArrowRight: "next", ArrowLeft: "back", Escape: "end"}[event.key];
    if (name) { event.preventDefault(); one(panel, `[data-do=${name}]`).click(); }
  });
  on(document, "visibilitychange", stayAwake);
  stayAwake();
}
