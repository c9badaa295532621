// Choosing among the patterns of the gallery.
function Gallery(form, cards) {
  function choose() {
    var wanted = all(form, "select"), count = 0;
    cards.forEach(card => {
      card.hidden = wanted.some(select => select.value && card.dataset[select.name] !== select.value);
      count += !card.hidden;
    });
    one(form, ".count").textContent = ngettext("{count} pattern", "{count} patterns", count, {count});
  }
  form.hidden = false;
  on(form, "change", choose);
  cards.forEach(card => {
    var link = one(card, "a"), hand = kept("hand");
    if (hand && link.dataset[hand]) { link.href = link.dataset[hand]; }
  });
  choose();
}
