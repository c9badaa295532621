"""Reading: from the files of a workspace to patterns and a book, with the place of everything.

In: YAML files, or the text of one. Out: frozen patterns, a book, and findings; nothing here raises on bad input.
`workspace.load` reads a folder, `workspace.read_one` a file, `workspace.read_text` a text that is no file.
"""
