// Looking at a chart: its size, one bead, one bead of the key.
// The beads of a chart: where they are, their key, and their part (row or strand) in the order of drawing.
function beadsOf(svg) {
  return all(svg, "[data-key], g[data-part] > text").flatMap(drawn => {
    var part = drawn.closest("[data-part]"), key = drawn.dataset.key || drawn.textContent;
    if (!part) { return []; }
    if (drawn.nodeName === "text") { return [{x: +drawn.getAttribute("x"), y: +drawn.getAttribute("y"), key, part}]; }
    var x = 0, y = 0;
    return drawn.getAttribute("d").match(/[Mhvl][^Mhvl]*/g).map(step => {
      var values = step.slice(1).match(/-?(\d+\.?\d*|\.\d+)/g).map(Number), kind = step[0];
      x = kind === "M" ? values[0] : kind === "v" ? x : x + values[0];
      y = kind === "M" ? values[1] : kind === "h" ? y : y + values[kind === "v" ? 0 : 1];
      return {x, y, key, part};
    });
  });
}

function Chart(figure) {
  var svg = one(figure, ".pane > svg"), pane = one(figure, ".pane"), zoom = one(figure, ".zoom");
  var told = one(zoom, "output"), beads = beadsOf(svg), size = 1, at;
  var keys = all(figure, ".key li");
  var gap = Math.min(9, ...beads.slice(1).map((bead, index) => Math.hypot(bead.x - beads[index].x, bead.y - beads[index].y) || 9));

  zoom.hidden = false;
  pane.tabIndex = 0;
  pane.role = "group";
  pane.ariaLabel = figure.dataset.label;

  function named(key) { return key + " " + one(figure, `[data-bead='${key}']`).textContent; }

  function resize(wanted, x, y) {
    var frame = pane.getBoundingClientRect(), before = size;
    size = Math.min(6, Math.max(1, wanted));
    x = x ? x - frame.left : frame.width / 2;
    y = y ? y - frame.top : frame.height / 2;
    var left = (pane.scrollLeft + x) * size / before - x, top = (pane.scrollTop + y) * size / before - y;
    svg.style.cssText = size > 1 ? "max-width:none;width:" + 100 * size + "%" : "";
    pane.scrollTo(left, top);
  }

  function tell(bead) {
    var same = beads.filter(other => other.part === bead.part);
    var name = bead.part.dataset.part.split("-"), isRow = name[0] === "row", place = same.indexOf(bead) + 1, count = same.length;
    if (isRow) {
      var columns = [...new Set(same.map(other => Math.round(other.x * 10)))].sort((a, b) => a - b);
      var words = one(figure.closest(".work"), `li[data-part='${bead.part.dataset.part}'] .arrow`);
      if (words?.textContent.trim() === "←") { columns.reverse(); }
      place = columns.indexOf(Math.round(bead.x * 10)) + 1;
      count = columns.length;
    }
    var values = {number: name[1], place, count, bead: named(bead.key)};
    at = bead;
    told.textContent = (isRow ? _("Row {number}, stitch {place} of {count}: {bead}", values) : _("Strand {number}, bead {place} of {count}: {bead}", values));
    all(svg, ".ring").forEach(ring => ring.remove());
    svg.insertAdjacentHTML("beforeend", `<circle class="ring" cx="${bead.x}" cy="${bead.y}" r="${gap * 0.62}"/>`);
    svg.lastChild.scrollIntoView({block: "nearest", inline: "nearest"});
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

  on(svg, "click", event => {
    var point = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse()), bead = nearest(point.x, point.y, 0, 0);
    if (bead && Math.hypot(bead.x - point.x, bead.y - point.y) < gap) { tell(bead); }
  });

  on(pane, "keydown", event => {
    var step = {ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1]}[event.key];
    if (step && !event.altKey && !event.ctrlKey && !event.metaKey) {
      var bead = at ? nearest(at.x, at.y, ...step) : beads[0];
      event.preventDefault();
      if (bead) { tell(bead); }
    }
    if (event.key === "+" || event.key === "=") { resize(size * 1.5); }
    if (event.key === "-") { resize(size / 1.5); }
  });

  // Two fingers: their distance sets the size.
  var apart = 0;
  on(pane, "touchmove", event => {
    var [left, right] = event.touches;
    if (!right) { return; }
    var now = Math.hypot(left.clientX - right.clientX, left.clientY - right.clientY);
    if (apart) { resize(size * now / apart, (left.clientX + right.clientX) / 2, (left.clientY + right.clientY) / 2); }
    apart = now;
  });
  on(pane, "touchend", () => { apart = 0; });

  keys.forEach(item => {
    var chip = button(item.childNodes, () => {
      var wanted = chip.ariaPressed !== "true", key = one(chip, "b").textContent;
      keys.forEach(other => { other.firstChild.ariaPressed = wanted && other === item; });
      svg.classList.toggle("one-key", wanted);
      all(svg, "[data-key], g[data-part] > text").forEach(drawn => {
        drawn.classList.toggle("chosen", wanted && (drawn.dataset.key || drawn.textContent) === key);
      });
      var count = beads.filter(bead => bead.key === key).length;
      told.textContent = wanted ? ngettext("{bead}: {count} bead in this chart", "{bead}: {count} beads in this chart", count, {count, bead: named(key)}) : "";
    });
    chip.ariaPressed = false;
    item.append(chip);
  });

  wire(zoom, name => { resize(name === "whole" ? 1 : name === "larger" ? size * 1.5 : size / 1.5); });
}
