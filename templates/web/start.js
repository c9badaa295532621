// The page as it is opened.
function theme(wanted) {
  if (wanted) { document.documentElement.dataset.theme = wanted; } else { delete document.documentElement.dataset.theme; }
}

all(document, ".theme").forEach(function (label) {
  var select = label.querySelector("select");
  label.hidden = false;
  select.value = kept("theme") || "";
  theme(select.value);
  select.addEventListener("change", function () { keep("theme", select.value); theme(select.value); });
});

all(document, "form.filter").forEach(function (form) { Gallery(form, all(document, ".gallery > li")); });

all(document, "article.pattern").forEach(function (article) {
  var place = new Place(article), bench = new Bench(place), colours = new Colours(article), names = {};
  var tools = article.querySelector(".tools"), news = article.querySelector(".news");
  all(tools, ".own input").forEach(function (input) { names[input.dataset.key] = input.parentNode.textContent.trim().slice(2); });
  all(article, "figure.chart").forEach(function (figure) { Chart(figure, names); });
  tools.hidden = false;

  function show() {
    news.hidden = !place.before;
    news.querySelector("span").textContent = _("Your marks are of version {before}, and this is version {now}. The pattern has changed: compare the rows before you go on.",
      {before: place.before, now: article.dataset.version});
    all(tools, "[type=radio]").forEach(function (radio) { radio.checked = radio.value === place.piece; });
    place.show();
    bench.show();
  }

  function act(name, element) {
    if (name === "keep-marks") { place.accept(); }
    if (name === "clear-marks") { if (place.before) { place.afresh(); } else { place.clear(); } }
    if (name === "colourway") { colours.show(); }
    if (name === "grey") { article.classList.toggle("grey", element.checked); }
    bench.act(name);
    show();
  }

  wire(tools, act);
  wire(article.querySelector(".bench"), act);
  article.addEventListener("change", function (event) {
    var line = event.target.closest("li[data-part]");
    if (event.target.type === "radio") { place.piece = event.target.value; place.save(); show(); }
    if (line) {
      var second = line.closest(".work").dataset.piece;
      if (article.querySelector(".work[data-piece='2']")) { place.piece = second; }
      place.mark(line, event.target.checked);
      show();
    }
  });
  all(article, ".ways a").forEach(function (link) {
    link.addEventListener("click", function () { keep("hand", link.dataset.hand); });
  });
  show();
});
