// The words of the page's language. The build puts the translations in front: WORDS by English text, PLURAL as in their catalogue.
function filled(text, values) {
  return text.replace(/\{(\w+)\}/g, function (whole, name) { return values && name in values ? values[name] : whole; });
}

function _(text, values) { return filled(WORDS[text] || text, values); }

function ngettext(one, many, count, values) {
  return filled((WORDS[one] || [one, many])[+PLURAL(count)], Object.assign({count: count}, values));
}
