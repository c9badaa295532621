// The colours in which a pattern is shown: as written, a colourway, or the maker's own, which are kept.
function inkOn(colour) {
  var [red, green, blue] = [1, 3, 5].map(at => {
    var value = parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue > 0.1791 ? "#000" : "#fff";   // where black and white stand out equally (WCAG 2.2)
}

function Colours(article) {
  var choice = one(article, "[data-do=colourway]"), own = one(article, ".own"), inputs = all(own, "input"), store = article.dataset.colours;
  var found, rules, late, script;

  this.show = function () {
    var isOwn = choice.value === "own", changed = JSON.parse(choice.selectedOptions[0].dataset.beads || "{}");
    own.hidden = !isOwn;
    rules = "";
    all(article, "[data-bead]").forEach(told => {
      var kind = told.nextElementSibling, written = told.written ||= [0, told.innerHTML, kind?.innerHTML], now = changed[told.dataset.bead] || written;
      told.innerHTML = now[1];
      if (kind) { kind.innerHTML = now[2]; }
    });
    inputs.forEach(input => {
      var key = input.dataset.key, colour = isOwn ? input.value : changed[key]?.[0] || input.defaultValue;
      rules += `;--b-${key}:${colour};--i-${key}:${inkOn(colour)};--p-${key}:color-mix(in srgb,${colour} 20%,#fff)`;
      (found.own ||= {})[key] = input.value;
    });
    article.style.cssText += rules;
    rules = choice.value && rules;
    found.choice = choice.value;
    keep(store, found);
    clearTimeout(late);
    late = setTimeout(article.dataset.steps && rules && !window.STEPS ? fetchSteps : paint, 99);
  };

  // Step pictures are files of their own, which no page can colour. In other colours they are written anew, from their text in a script beside them.
  function paint() {
    all(article, ".step-picture img").forEach(image => {
      var [address, at] = image.src.split("#"), written = image.written ||= address;
      if (rules) {
        address = window.STEPS ? STEPS[written.match(/([^/]+)\.svg$/)[1]] : atob(written.split(",")[1]);
        address = "data:image/svg+xml;base64," + btoa(address.replace("</style>", "svg{" + rules + "}</style>"));
      } else { address = written; }
      image.src = address + (at ? "#" + at : "");
    });
  }

  function fetchSteps() {
    if (!script) {
      script = made("script");
      script.src = article.dataset.steps;
      on(script, "load", paint);
      document.head.append(script);
    }
  }

  this.read = function () {
    found = kept(store) || {};
    inputs.forEach(input => { input.value = found.own?.[input.dataset.key] || input.value; });
    choice.value = [...choice.options].some(option => option.value === found.choice) ? found.choice : "";
    if (choice.value || rules) { this.show(); }
  };

  on(own, "input", this.show);
  this.read();
}
