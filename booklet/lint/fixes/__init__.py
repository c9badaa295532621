"""Mending what has one right answer, in the text of the file: everything that is not at fault stays as it was, byte for byte.

In: the text of a pattern file. Out: the mended text. A mending that would change anything else that the file
says (the chart, a count, a word) is not made.
"""
