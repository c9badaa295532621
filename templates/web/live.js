// While "booklet watch" runs: the page is loaded again, in place, when it has changed, and what is wrong stands over it.
var own = document.currentScript.dataset.digest, store = "booklet-live:" + location.pathname, source, box, closed = "";
var CONTROLS = "a, button, input, select, summary, [tabindex]", MARKS = "h1, h2, h3, li, figure, p";

function all(what) { return [...document.querySelectorAll(what)]; }

// The line or heading that stands at the top of the window, to come back to even if the page above it has grown.
function leave() {
  var marks = all(MARKS), at = marks.findIndex(mark => mark.getBoundingClientRect().bottom > 0);
  sessionStorage.setItem(store, JSON.stringify({
    mark: at, text: at < 0 ? "" : marks[at].textContent.slice(0, 80), top: at < 0 ? 0 : marks[at].getBoundingClientRect().top,
    y: scrollY, focus: all(CONTROLS).indexOf(document.activeElement), open: all("details").map(details => details.open),
    panes: all(".pane").map(pane => [pane.querySelector("svg")?.style.cssText, pane.scrollLeft, pane.scrollTop])
  }));
  history.scrollRestoration = "manual";
  location.reload();
}

function comeBack() {
  var place = JSON.parse(sessionStorage.getItem(store)), moved = false;
  sessionStorage.removeItem(store);
  if (!place) { return; }
  all("details").forEach((details, at) => { if (place.open[at]) { details.open = true; } });
  all(".pane").forEach((pane, at) => {
    var [style, left, top] = place.panes[at] || [], svg = pane.querySelector("svg");
    if (style && svg) { svg.style.cssText = style; }
    pane.scrollTo(left, top);
  });
  all(CONTROLS)[place.focus]?.focus({preventScroll: true});
  function scroll() {
    var marks = all(MARKS), mark = marks[place.mark];
    if (moved) { return; }
    if (mark?.textContent.slice(0, 80) !== place.text) {
      mark = marks.find(other => other.textContent.slice(0, 80) === place.text);
    }
    scrollTo({top: mark ? scrollY + mark.getBoundingClientRect().top - place.top : place.y, behavior: "instant"});
  }
  ["wheel", "touchstart", "keydown", "mousedown"].forEach(name => { addEventListener(name, () => { moved = true; }, {once: true, passive: true}); });
  scroll();
  addEventListener("load", () => {    // pictures and fonts move what stands below them
    document.fonts.ready.then(scroll);
    history.scrollRestoration = "auto";
  });
}

function line(kind, text, language) {
  var made = document.createElement(kind);
  made.textContent = text;
  if (language) { made.lang = language; }
  return made;
}

var LOOK = `section{position:fixed;z-index:99;min-width:13rem;right:1rem;top:1rem;max-width:min(46rem,calc(100% - 2rem));max-height:60vh;overflow:auto;box-sizing:border-box;
  font:1rem/1.45 system-ui,sans-serif;color:#1b1b1b;background:#fffdf6;border:2px solid #1b1b1b;border-left:.7rem solid #57606a;border-radius:.4rem;padding:.8rem 1rem;box-shadow:0 .3rem 1.5rem #0006}
  .worse{border-left-color:#9a6700}.bad{border-left-color:#b3261e}p,ul{margin:0 0 .4rem}ul{padding:0;list-style:none}li{padding:.35rem 0;border-top:1px solid #c9c6bf;overflow-wrap:anywhere}
  code{display:block;font:600 .95rem/1.4 ui-monospace,monospace}summary{cursor:pointer;min-height:1.8rem}
  button{float:right;font:inherit;min-height:2.2rem;margin-left:1rem;background:#fff;color:inherit;border:1px solid #57606a;border-radius:.3rem}
  :focus-visible{outline:3px solid #0b57d0;outline-offset:1px}@media print{section{display:none}}`;

// What booklet finds is told in English, as in the terminal; all else in the language of the page.
function head(news) {
  if (!news.kept) { return line("p", news.head, news.language); }
  return line("p", news.kept.length ? _("The pages of {pages} are as they last were without an error.", {pages: news.kept.join(", ")}) : _("The pages are as they last were without an error."));
}

function show(news) {
  var told = JSON.stringify([news.kept, news.head, news.found]), first = news.head || news.kept ? head(news) : "", count = news.found.length;
  if (box) { box.remove(); box = null; }
  if (!first && !count || told === closed) { return; }
  box = document.createElement("div");
  box.id = "booklet-live";
  var panel = document.createElement("section"), list = document.createElement("ul"), details = document.createElement("details"), close = line("button", _("Close"));
  panel.className = news.bad ? "bad" : news.found.some(one => one.level !== "note") ? "worse" : "";
  panel.ariaLabel = _("What booklet found");
  panel.role = "status";
  news.found.forEach(one => {
    var item = line("li", "", "en");
    item.append(line("code", one.where), line("b", one.level), ": " + one.text + (one.hint ? " (" + one.hint + ")" : ""));
    list.append(item);
  });
  close.type = "button";
  close.addEventListener("click", () => { closed = told; box.remove(); box = null; });
  details.open = news.bad;
  details.append(line("summary", ngettext("{count} finding", "{count} findings", count, {count})), list);
  panel.append(line("style", LOOK), close, first, count ? details : "");
  box.attachShadow({mode: "open"}).append(panel);
  document.body.append(box);
}

function follow() {
  if (source || document.visibilityState !== "visible") { return; }
  source = new EventSource("/~/events?page=" + encodeURIComponent(location.pathname));
  source.onmessage = event => {
    var news = JSON.parse(event.data);
    if (news.digest !== own) { rest(); leave(); } else { show(news); }
  };
  source.onerror = () => { show({head: _("booklet watch has stopped; this page follows again when it runs again."), found: [], bad: true}); };
}

// A browser opens few connections to one place: a page that nobody looks at holds none.
function rest() {
  source?.close();
  source = null;
}

document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") { follow(); } else { rest(); } });
addEventListener("pagehide", rest);
addEventListener("pageshow", follow);
comeBack();
follow();
