// While "booklet watch" runs: the page is loaded again, in place, when it has changed, and what is wrong stands over it.
(function () {
  "use strict";
  var own = document.currentScript.dataset.digest, store = "booklet-live:" + location.pathname, source = null, box = null, closed = "";

  function all(what) { return Array.from(document.querySelectorAll(what)); }
  var CONTROLS = "a, button, input, select, summary, [tabindex]", MARKS = "h1, h2, h3, li, figure, p";

  // The line or heading that stands at the top of the window, to come back to even if the page above it has grown.
  function leave() {
    var marks = all(MARKS), at = marks.findIndex(function (mark) { return mark.getBoundingClientRect().bottom > 0; });
    sessionStorage.setItem(store, JSON.stringify({
      mark: at, text: at < 0 ? "" : marks[at].textContent.slice(0, 80), top: at < 0 ? 0 : marks[at].getBoundingClientRect().top,
      y: scrollY, focus: all(CONTROLS).indexOf(document.activeElement), bench: all(".bench").map(function (bench) { return !bench.hidden; }),
      open: all("details").map(function (details) { return details.open; }),
      panes: all(".pane").map(function (pane) { var svg = pane.querySelector("svg"); return [svg ? svg.style.width : "", pane.scrollLeft, pane.scrollTop]; })
    }));
    history.scrollRestoration = "manual";
    location.reload();
  }

  function comeBack() {
    var place = JSON.parse(sessionStorage.getItem(store) || "null");
    sessionStorage.removeItem(store);
    if (!place) { return; }
    all("details").forEach(function (details, at) { if (place.open[at]) { details.open = true; } });
    all("article.pattern").forEach(function (article, at) { if (place.bench[at]) { article.querySelector("[data-do=begin]").click(); } });
    all(".pane").forEach(function (pane, at) {
      var kept = place.panes[at], svg = pane.querySelector("svg");
      if (!kept || !svg) { return; }
      if (kept[0]) { svg.style.width = kept[0]; svg.style.maxWidth = "none"; pane.classList.add("large"); }
      pane.scrollTo(kept[1], kept[2]);
    });
    var control = all(CONTROLS)[place.focus], moved = false;
    if (control) { control.focus({preventScroll: true}); }
    function scroll() {
      var marks = all(MARKS), mark = marks[place.mark];
      if (moved) { return; }
      if (!mark || mark.textContent.slice(0, 80) !== place.text) {
        mark = marks.find(function (other) { return other.textContent.slice(0, 80) === place.text; });
      }
      scrollTo({top: mark ? scrollY + mark.getBoundingClientRect().top - place.top : place.y, behavior: "instant"});
    }
    ["wheel", "touchstart", "keydown", "mousedown"].forEach(function (name) { addEventListener(name, function () { moved = true; }, {once: true, passive: true}); });
    scroll();
    addEventListener("load", function () {    // pictures and fonts move what stands below them
      document.fonts.ready.then(scroll);
      history.scrollRestoration = "auto";
    });
  }

  function line(kind, text) {
    var made = document.createElement(kind);
    made.textContent = text;
    return made;
  }

  function show(news) {
    var told = JSON.stringify([news.head, news.found]), worst = news.bad || news.found.some(function (one) { return one.level !== "note"; });
    if (box) { box.remove(); box = null; }
    if (!news.head && !news.found.length || told === closed) { return; }
    box = document.createElement("div");
    box.id = "booklet-live";
    var shadow = box.attachShadow({mode: "open"}), panel = document.createElement("section"), list = document.createElement("ul"), close = line("button", "Close");
    var counted = news.found.length + (news.found.length === 1 ? " finding" : " findings"), details = document.createElement("details");
    panel.append(line("style", "section{position:fixed;z-index:99;min-width:13rem;right:1rem;top:1rem;max-width:min(46rem,calc(100% - 2rem));max-height:60vh;overflow:auto;box-sizing:border-box;" +
      "font:1rem/1.45 system-ui,sans-serif;color:#1b1b1b;background:#fffdf6;border:2px solid #1b1b1b;border-left:.7rem solid " + (news.bad ? "#b3261e" : worst ? "#9a6700" : "#57606a") +
      ";border-radius:.4rem;padding:.8rem 1rem;box-shadow:0 .3rem 1.5rem #0006}p,ul{margin:0 0 .4rem}ul{padding:0;list-style:none}li{padding:.35rem 0;border-top:1px solid #c9c6bf;overflow-wrap:anywhere}" +
      "code{display:block;font:600 .95rem/1.4 ui-monospace,monospace}summary{cursor:pointer;min-height:1.8rem}button{float:right;font:inherit;min-height:2.2rem;margin-left:1rem;" +
      "background:#fff;color:inherit;border:1px solid #57606a;border-radius:.3rem}:focus-visible{outline:3px solid #0b57d0;outline-offset:1px}@media print{section{display:none}}"));
    panel.setAttribute("aria-label", "What booklet found");
    panel.setAttribute("role", "status");
    news.found.forEach(function (one) {
      var item = document.createElement("li");
      item.append(line("code", one.where), line("b", one.level), ": " + one.text + (one.hint ? " (" + one.hint + ")" : ""));
      list.append(item);
    });
    close.type = "button";
    close.addEventListener("click", function () { closed = told; box.remove(); box = null; });
    details.open = news.bad;
    details.append(line("summary", counted), list);
    panel.append(close);
    if (news.head) { panel.append(line("p", news.head)); }
    if (news.found.length) { panel.append(details); }
    shadow.append(panel);
    document.body.append(box);
  }

  function follow() {
    if (source || document.visibilityState !== "visible") { return; }
    source = new EventSource("/~/events?page=" + encodeURIComponent(location.pathname));
    source.onmessage = function (event) {
      var news = JSON.parse(event.data);
      if (news.digest !== own) { rest(); leave(); } else { show(news); }
    };
    source.onerror = function () { show({head: "booklet watch has stopped; this page follows again when it runs again.", found: [], bad: true}); };
  }

  // A browser opens few connections to one place: a page that nobody looks at holds none.
  function rest() {
    if (source) { source.close(); source = null; }
  }

  document.addEventListener("visibilitychange", function () { if (document.visibilityState === "visible") { follow(); } else { rest(); } });
  addEventListener("pagehide", rest);
  addEventListener("pageshow", follow);
  comeBack();
  follow();
}());
