// The words of the page's language. The build puts the translations in front: WORDS by English text, PLURAL as in their catalogue.
function filled(text, values) {
  return text.replace(/\{(\w+)\}/g, (whole, name) => values?.[name] ?? whole);
}

function _(text, values) { return filled(WORDS[text] || text, values); }

function ngettext(one, many, count, values) {
  return filled((WORDS[one] || [one, many])[+PLURAL(count)], {count, ...values});
}
