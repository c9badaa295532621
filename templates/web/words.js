// What is said on the page. The build puts all texts into the language of the page, and in place of PLURAL its rule for the number n.
function _(text, values) {
  return text.replace(/\{(\w+)\}/g, (whole, name) => values?.[name] ?? whole);
}

function ngettext(forms, n, values) { return _(forms[PLURAL], values); }
