"""The press: pages of HTML to one PDF, section by section.

In: a book as HTML, cut into parts that each begin a page. Every part is set on its own, in any process, and kept as a
fragment under the digest of everything it depends on. Out: the fragments joined to one tagged PDF, which is the same
whatever was kept, and in which order and by how many processes the rest was set.
"""
