// The colours in which a pattern is shown: as written, a colourway, or the maker's own, which are kept.
function inkOn(colour) {
  var light = [1, 3, 5].map(at => {
    var value = parseInt(colour.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
  });
  var bright = 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2];
  return bright > 0.1791 ? "#000000" : "#ffffff";   // where black and white stand out equally (WCAG 2.2)
}

function Colours(article) {
  var tools = one(article, ".tools"), choice = one(tools, "[data-do=colourway]"), own = one(tools, ".own");
  var store = article.dataset.store + "/colours", found;

  function declare(text) {
    text.split(";").forEach(rule => {
      var at = rule.indexOf(":");
      if (at > 0) { article.style.setProperty(rule.slice(0, at).trim(), rule.slice(at + 1)); }
    });
  }

  this.show = function () {
    var option = choice.selectedOptions[0];
    own.hidden = choice.value !== "own";
    declare(option.dataset.colours || all(own, "input").map(input => {
      return "--b-" + input.dataset.key + ":" + input.value + ";--i-" + input.dataset.key + ":" + inkOn(input.value);
    }).join(";"));
    found.choice = choice.value;
    all(own, "input").forEach(input => { (found.own ||= {})[input.dataset.key] = input.value; });
    keep(store, found);
  };

  this.read = function () {
    found = kept(store) || {};
    all(own, "input").forEach(input => { input.value = found.own?.[input.dataset.key] || input.value; });
    if ([...choice.options].some(option => option.value === found.choice)) {
      choice.value = found.choice;
      this.show();
    }
  };

  on(own, "input", this.show);
  this.read();
}
