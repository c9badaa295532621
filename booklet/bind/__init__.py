"""Binding: patterns and pages to a book or a single, as PDF and as web pages.

In: a workspace without errors. Out: files under build/. Templates and style sheets come from templates/;
a folder of that name in the workspace wins file by file.
"""
