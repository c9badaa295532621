// Which rows and strands are done, piece by piece, for one version of a pattern.
function Place(article) {
  var store = article.dataset.store, version = article.dataset.version;
  var found = kept(store) || {};
  this.article = article;
  this.pieces = found.pieces || {};
  this.piece = found.piece || "1";
  this.before = found.version && found.version !== version && Object.keys(this.pieces).length ? found.version : "";
  this.save = function () {
    if (!this.before) { keep(store, {version: version, piece: this.piece, pieces: this.pieces}); }
  };
  this.done = function () { return this.pieces[this.piece] || (this.pieces[this.piece] = {}); };
  this.accept = function () { this.before = ""; this.save(); };
  this.clear = function () { this.pieces[this.piece] = {}; this.save(); };
  this.afresh = function () { this.pieces = {}; this.accept(); };
}

// The rows and strands of the chosen piece, in working order.
Place.prototype.lines = function () {
  var own = this.article.querySelector(".work[data-piece='2']") ? this.piece : "1";
  return all(this.article, ".work[data-piece='" + own + "'] li[data-part]");
};

Place.prototype.mark = function (line, isDone) {
  if (isDone) { this.done()[line.dataset.part] = 1; } else { delete this.done()[line.dataset.part]; }
  this.save();
};

Place.prototype.isDone = function (line) { return this.done()[line.dataset.part] === 1; };

Place.prototype.current = function () {
  var place = this;
  return this.lines().find(function (line) { return !place.isDone(line); });
};

// Shows the marks in words and charts.
Place.prototype.show = function () {
  var place = this, lines = this.lines(), now = this.current(), count = 0;
  all(this.article, "[data-part]").forEach(function (part) { part.classList.remove("done", "now"); });
  all(this.article, "li[data-part] input").forEach(function (box) { box.checked = false; });
  lines.forEach(function (line) {
    var isDone = place.isDone(line), kind = isDone ? "done" : line === now ? "now" : "";
    line.querySelector("input").checked = isDone;
    count += isDone;
    if (kind) { [line].concat(chartParts(line)).forEach(function (part) { part.classList.add(kind); }); }
  });
  lines.forEach(function (line) { line.toggleAttribute("aria-current", line === now && count > 0); });
  this.article.querySelector(".progress").textContent = _("{count} of {total} rows and strands done", {count: count, total: lines.length});
};

function chartParts(line) {
  return all(line.closest(".work"), "g[data-part='" + line.dataset.part + "'], g[data-part='" + line.dataset.also + "']");
}
