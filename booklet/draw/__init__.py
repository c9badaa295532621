"""Pictures: from a piece to SVG text, and from there to PNG.

In: frozen `craft` structures. Out: SVG text in true millimetres, the same bytes for the same piece, with a
text alternative. Letters and figures are drawn as strokes, so no picture depends on a font. Beads are
dashes on a line and not elements: a picture has a bounded number of elements, however many beads it shows.
"""
