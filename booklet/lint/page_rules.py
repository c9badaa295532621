"""What is said of the faults that only set pages show (bind/page_fit.py, bind/set_pages.py): no rule can look for them without the typesetter."""

from __future__ import annotations

PAGE_RULES = {
    "chart-too-large-for-page": "A chart fits one page of this book only with beads so narrow that their letters cannot be read (2.4 mm, more in large print).\n\n"
                                "In print it goes on over several pages, with rows repeated and a map of its parts; on the web it is drawn with narrow beads.",
    "type-too-small": "Some type on a page is smaller than three quarters of the running text of this edition.\n\nIt comes from a template or style sheet of your own; a reader who "
                      "chose an edition for its type cannot read it.",
    "text-past-margin": "Text runs out of the type area of its page.\n\nIt is mostly an address or a word that cannot be broken. A printer trims what stands too near the edge.",
    "nearly-empty-page": "A page has hardly anything on it.\n\nA line or two that run over cost the buyer a sheet; shorten the text before, or let it be a page longer.",
    "picture-too-coarse": "A picture is printed with fewer than 300 dots an inch, at the size at which it was set.\n\nPrinters ask for 300 in photos; with fewer, beads turn to mush.",
    "character-not-in-fonts": "A character is in none of our fonts, so that a font of this computer was taken for it, or an empty box.\n\nOn another computer the page comes out otherwise. "
                              "Emoji and signs such as hearts are the usual ones.",
}
