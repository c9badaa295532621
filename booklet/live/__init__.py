"""Pages that follow their sources: what changed is built again on every save, and browsers that show a page load it again in place.

In: a workspace whose files change. Out: web pages served on 127.0.0.1 alone, and kept up to date in build/html/.
"""
