// Looking at a chart: its size, one bead, one bead of the key.
var SVG = "http://www.w3.org/2000/svg";

// The beads of a chart: where they are, their key, and their part (row or strand) in the order of drawing.
function beadsOf(svg) {
  return all(svg, "[data-key], g[data-part] > text").flatMap(drawn => {
    var part = drawn.closest("[data-part]"), key = drawn.dataset.key || drawn.textContent;
    if (!part) { return []; }
    if (drawn.nodeName === "text") { return [{x: +drawn.getAttribute("x"), y: +drawn.getAttribute("y"), key: key, part: part}]; }
    var x = 0, y = 0;
    return drawn.getAttribute("d").match(/[Mhvl][^Mhvl]*/g).map(step => {
      var values = step.slice(1).match(/-?(\d+\.?\d*|\.\d+)/g).map(Number), kind = step[0];
      x = kind === "M" ? values[0] : kind === "v" ? x : x + values[0];
      y = kind === "M" ? values[1] : kind === "h" ? y : y + values[kind === "v" ? 0 : 1];
      return {x: x, y: y, key: key, part: part};
    });
  });
}

function Chart(figure, names) {
  var svg = one(figure, ".pane > svg"), pane = one(figure, ".pane"), zoom = one(figure, ".zoom");
  var told = one(zoom, "output"), beads = beadsOf(svg), size = 1, at = null, ring = null;
  var keys = all(figure, ".key li");
  var gap = beads.length > 1 ? Math.min.apply(null, beads.slice(1).map((bead, index) => {
    return Math.hypot(bead.x - beads[index].x, bead.y - beads[index].y) || 9;
  })) : 3;

  zoom.hidden = false;
  pane.tabIndex = 0;
  pane.setAttribute("role", "group");
  pane.setAttribute("aria-label", _("{chart}. The arrow keys go from bead to bead, plus and minus change its size.", {chart: zoom.getAttribute("aria-label").replace(/:.*/, "")}));

  function resize(wanted, x, y) {
    var frame = pane.getBoundingClientRect(), before = size;
    size = Math.min(6, Math.max(1, wanted));
    x = x === undefined ? frame.width / 2 : x - frame.left;
    y = y === undefined ? frame.height / 2 : y - frame.top;
    var left = (pane.scrollLeft + x) * size / before - x, top = (pane.scrollTop + y) * size / before - y;
    svg.style.width = size > 1 ? 100 * size + "%" : "";
    svg.style.maxWidth = size > 1 ? "none" : "";
    pane.classList.toggle("large", size > 1);
    pane.scrollTo(left, top);
  }

  function tell(bead) {
    var same = beads.filter(other => other.part === bead.part);
    var name = bead.part.dataset.part.split("-"), isRow = name[0] === "row", place = same.indexOf(bead) + 1, count = same.length;
    if (isRow) {
      var columns = Array.from(new Set(same.map(other => Math.round(other.x * 10)))).sort((a, b) => a - b);
      var words = figure.closest(".work").querySelector("li[data-part='" + bead.part.dataset.part + "'] .arrow");
      if (words && words.textContent.trim() === "←") { columns.reverse(); }
      place = columns.indexOf(Math.round(bead.x * 10)) + 1;
      count = columns.length;
    }
    var values = {number: name[1], place: place, count: count, bead: bead.key + " " + names[bead.key]};
    at = bead;
    told.textContent = (isRow ? _("Row {number}, stitch {place} of {count}: {bead}", values) : _("Strand {number}, bead {place} of {count}: {bead}", values));
    if (!ring) { ring = document.createElementNS(SVG, "circle"); ring.setAttribute("class", "ring"); svg.append(ring); }
    ring.setAttribute("cx", bead.x);
    ring.setAttribute("cy", bead.y);
    ring.setAttribute("r", gap * 0.62);
    ring.scrollIntoView({block: "nearest", inline: "nearest"});
  }

  // The bead that is nearest to a point, or nearest in one direction from it.
  function nearest(x, y, across, down) {
    var best = null, least = Infinity;
    beads.forEach(bead => {
      var dx = bead.x - x, dy = bead.y - y, ahead = dx * across + dy * down, aside = Math.abs(dx * down) + Math.abs(dy * across);
      if ((across || down) && ahead < 0.1) { return; }
      var far = across || down ? ahead + 2 * aside : Math.hypot(dx, dy);
      if (far < least) { least = far; best = bead; }
    });
    return best;
  }

  svg.addEventListener("click", event => {
    var point = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse()), bead = nearest(point.x, point.y, 0, 0);
    if (bead && Math.hypot(bead.x - point.x, bead.y - point.y) < gap) { tell(bead); }
  });

  pane.addEventListener("keydown", event => {
    var step = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1]}[event.key];
    if (step && !event.altKey && !event.ctrlKey && !event.metaKey) {
      var bead = at ? nearest(at.x, at.y, step[0], step[1]) : beads[0];
      event.preventDefault();
      if (bead) { tell(bead); }
    }
    if (event.key === "+" || event.key === "=") { resize(size * 1.5); }
    if (event.key === "-") { resize(size / 1.5); }
  });

  // Two fingers: their distance sets the size.
  var fingers = {}, apart = 0;
  function spread() {
    var points = Object.values(fingers);
    return points.length === 2 ? Math.hypot(points[0].clientX - points[1].clientX, points[0].clientY - points[1].clientY) : 0;
  }
  pane.addEventListener("pointerdown", event => { if (event.pointerType === "touch") { fingers[event.pointerId] = event; apart = spread(); } });
  pane.addEventListener("pointermove", event => {
    if (!fingers[event.pointerId]) { return; }
    fingers[event.pointerId] = event;
    var now = spread(), points = Object.values(fingers);
    if (now && apart) {
      resize(size * now / apart, (points[0].clientX + points[1].clientX) / 2, (points[0].clientY + points[1].clientY) / 2);
      apart = now;
    }
  });
  ["pointerup", "pointercancel"].forEach(name => { addEventListener(name, event => { delete fingers[event.pointerId]; }); });

  keys.forEach(item => {
    var chip = button(item.childNodes, () => {
      var wanted = chip.getAttribute("aria-pressed") !== "true", key = one(chip, "b").textContent;
      keys.forEach(other => { other.firstChild.setAttribute("aria-pressed", wanted && other === item); });
      svg.classList.toggle("one-key", wanted);
      all(svg, "[data-key], g[data-part] > text").forEach(drawn => {
        drawn.classList.toggle("chosen", wanted && (drawn.dataset.key || drawn.textContent) === key);
      });
      var count = beads.filter(bead => bead.key === key).length;
      told.textContent = wanted ? ngettext("{bead}: {count} bead in this chart", "{bead}: {count} beads in this chart", count, {bead: key + " " + names[key]}) : "";
    });
    chip.setAttribute("aria-pressed", false);
    item.append(chip);
  });

  wire(zoom, name => { resize(name === "whole" ? 1 : name === "larger" ? size * 1.5 : size / 1.5); });
}
