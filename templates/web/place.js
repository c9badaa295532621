// Which rows and strands are done, piece by piece, for one version of a pattern.
class Place {
  constructor(article) {
    this.article = article;
    this.read();
  }

  // What is kept; another way to work the same piece may have changed it.
  read() {
    var data = this.article.dataset, found = kept(data.store) || {};
    this.pieces = found.pieces || {};
    this.piece = found.piece || "1";
    this.isOpen = !!found.open;   // whether the row that is next stands large at the foot of the page
    this.before = found.version !== data.version && Object.values(this.pieces).some(done => Object.keys(done).length) ? found.version : "";
  }

  save() {
    var data = this.article.dataset;
    if (!this.before) { keep(data.store, {version: data.version, piece: this.piece, pieces: this.pieces, open: this.isOpen}); }
  }

  done() { return this.pieces[this.piece] ||= {}; }

  accept() { this.before = ""; this.save(); }

  // Without marks of this piece; of any piece, if they were of another version.
  clear() {
    this.pieces = this.before ? {} : {...this.pieces, [this.piece]: {}};
    this.accept();
  }

  // The rows and strands of the chosen piece, in working order.
  lines() {
    var own = one(this.article, ".work[data-piece='2']") ? this.piece : "1";
    return all(this.article, `.work[data-piece='${own}'] li[data-part]`);
  }

  mark(line, isDone) {
    this.done()[line.dataset.part] = isDone ? 1 : undefined;   // which is not kept
    this.save();
  }

  isDone(line) { return this.done()[line.dataset.part] === 1; }

  current() { return this.lines().find(line => !this.isDone(line)); }

  // Shows the marks in words and charts.
  show() {
    var lines = this.lines(), now = this.current(), count = 0;
    all(this.article, "[data-part]").forEach(part => part.classList.remove("done", "now"));
    all(this.article, "li[data-part] input").forEach(box => { box.checked = false; });
    lines.forEach(line => {
      var isDone = this.isDone(line), kind = isDone ? "done" : line === now ? "now" : "";
      one(line, "input").checked = isDone;
      count += isDone;
      if (kind) { [line].concat(chartParts(line)).forEach(part => part.classList.add(kind)); }
    });
    lines.forEach(line => { line.ariaCurrent = line === now && count ? "step" : null; });
    one(this.article, ".progress").textContent = _("{count} of {total} rows and strands done", {count, total: lines.length});
  }
}

function chartParts(line) {
  return all(line.closest(".work"), `g[data-part='${line.dataset.part}'], g[data-part='${line.dataset.also}']`);
}
