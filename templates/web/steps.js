// The thread of a step on its way, one action at a time. The picture's file knows how: the fragment of its address says how far.
function Steps(box) {
  var image = one(box, "img"), last = +box.dataset.moves, at = 0;
  var parts = image.alt.split(/; (?=\d+ )/), group = made("div"), told = made("output");
  parts[0] = parts[0].replace(/^.*?(?=1 )/, "");                        // what stands before the first number
  parts[last - 1] = parts[last - 1].replace(/\. [^.]*\.$/, "");        // the sentence on the needle

  function go(step) {
    at = (at + step + last + 1) % (last + 1);
    image.src = image.src.split("#")[0] + (at ? (isCalm() ? "#s" : "#p") + at : "");
    told.textContent = at ? parts[at - 1] : "";
  }

  group.className = "moves";
  [["←", _("Back along the thread"), -1], ["→", _("On along the thread"), 1]].forEach(sign => {
    var press = button([sign[0]], () => go(sign[2]));
    press.ariaLabel = sign[1];
    group.append(press);
  });
  group.append(told);
  box.append(group);
}
