"""`python3 -m tests [pytest arguments]`: the test suite in the checkout's environment, on all cores."""

import sys

from booklet import bootstrap

# Programs that the tests run, each with the package that holds it.
TOOLS = {
    "pdftoppm": {"apt-get": "poppler-utils", "dnf": "poppler-utils", "brew": "poppler"},
    "chromium": {"apt-get": "chromium", "dnf": "chromium", "brew": "--cask chromium"},
    "chromedriver": {"apt-get": "chromium-driver", "dnf": "chromedriver", "brew": "--cask chromedriver"},
    "java": {"apt-get": "default-jre-headless", "dnf": "java-latest-openjdk-headless", "brew": "openjdk"},
    "npm": {"apt-get": "npm", "dnf": "nodejs-npm", "brew": "node"},
    "qpdf": {"apt-get": "qpdf", "dnf": "qpdf", "brew": "qpdf"},
}


def start():
    """Set up what the tests need, then hand over to pytest."""
    if bootstrap.is_needed("test"):
        bootstrap.enter("tests", "test", TOOLS)
    import pytest

    words = sys.argv[1:]
    is_spread = any(word.startswith(("-n", "--numprocesses", "-p")) for word in words)
    spread = [] if is_spread else ["-n", "auto", "--dist", "loadfile"]   # what a file sets up once is set up once
    sys.exit(pytest.main([*spread, *words]))


if __name__ == "__main__":
    start()
