// Choosing among the patterns of the gallery.
function Gallery(form, cards) {
  function choose() {
    var wanted = all(form, "select"), count = 0;
    cards.forEach(function (card) {
      card.hidden = wanted.some(function (select) { return select.value && card.dataset[select.name] !== select.value; });
      count += !card.hidden;
    });
    form.querySelector(".count").textContent = ngettext("{count} pattern", "{count} patterns", count);
  }
  form.hidden = false;
  form.addEventListener("change", choose);
  form.addEventListener("submit", function (event) { event.preventDefault(); });
  cards.forEach(function (card) {
    var link = card.querySelector("a"), hand = kept("hand");
    if (hand && link.dataset[hand]) { link.href = link.dataset[hand]; }
  });
  choose();
}
