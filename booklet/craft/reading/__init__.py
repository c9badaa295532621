"""Reading printed words back, written apart from the code that writes them and sharing nothing with it.

It knows only what a maker knows: how a stitch, a row start, a row end, a set and a strand are worked.
"""
