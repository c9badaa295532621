"""The web edition: pages that need nothing but a browser, from the views of the patterns to the files of build/html/."""
