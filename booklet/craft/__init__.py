"""The craft: from a piece (rows, strands, hanger) to the needle's path, words, tally, size and thread.

In: plain frozen structures. Out: the same. Nothing here reads a file, knows HTML, or imports
another part of this project.
"""
