// The page as it is opened.
function theme(wanted) { document.documentElement.dataset.theme = wanted; }

all(document, ".theme").forEach(label => {
  var select = one(label, "select");
  label.hidden = false;
  select.value = kept("theme") || "";
  theme(select.value);
  on(select, "change", () => { keep("theme", select.value); theme(select.value); });
});

all(document, "form.filter").forEach(form => { Gallery(form, all(document, ".gallery > li")); });

all(document, "article.pattern").forEach(article => {
  var place = new Place(article), bench = new Bench(place), colours = new Colours(article);
  var tools = one(article, ".tools"), news = one(article, ".news");
  all(article, "figure.chart").forEach(Chart);
  all(article, "[data-moves]").forEach(Steps);
  tools.hidden = false;

  function show() {
    news.hidden = !place.before;
    one(news, "b").textContent = place.before;
    all(tools, "[type=radio]").forEach(radio => { radio.checked = radio.value === place.piece; });
    place.show();
    bench.show();
  }

  function act(name, element) {
    if (name === "keep-marks") { place.accept(); }
    if (name === "clear-marks" && confirm(_("Clear the marks? They cannot be brought back."))) { place.clear(); }
    if (name === "colourway") { colours.show(); }
    if (name === "grey") { article.classList.toggle("grey", element.checked); }
    bench.act(name);
    show();
  }

  wire(tools, act);
  wire(one(article, ".bench"), act);
  on(article, "change", event => {
    var line = event.target.closest("li[data-part]");
    if (event.target.type === "radio") { place.piece = event.target.value; place.save(); show(); }
    if (line) {
      var second = line.closest(".work").dataset.piece;
      if (one(article, ".work[data-piece='2']")) { place.piece = second; }
      place.mark(line, event.target.checked);
      show();
    }
  });
  all(article, ".ways a").forEach(link => {
    on(link, "click", () => { keep("hand", link.dataset.hand); });
  });
  // To another way to work it, in the same file.
  on(window, "hashchange", () => { if (article.matches(".variants > :target")) { place.read(); colours.read(); show(); scrollTo(0, 0); } });
  show();
});

// In one file the hand is the one that was chosen last.
all(document, ".variants").forEach(variants => {
  var link = one(variants, `.ways a[data-hand='${kept("hand")}']`);
  if (link && !location.hash) { location.replace(link.hash); }
});
