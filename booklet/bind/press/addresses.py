"""Addresses in pages: what they lead to, and what may be read from them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from html import unescape
from itertools import chain
from pathlib import Path
from urllib.parse import unquote, urlsplit

from ...source.files import inside
from ..fonts import faces

BASE = "booklet:///"   # relative addresses in a page begin here; no path of the machine gets into a PDF
LINK = "book:"         # a link to another part of the book: book:ID?what it leads to


def fetcher_of(files: Mapping[str, bytes]):
    """A fetcher that knows our own fonts and the given files, by their address, and refuses everything else."""
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    own = {face.path.as_uri(): face.path for face in faces()}

    class Fetcher(URLFetcher):
        def fetch(self, url, headers=None):
            is_ours = url.startswith(BASE) or not urlsplit(url).scheme   # addresses of photos are not joined to a scheme that urllib does not know
            name = unquote(urlsplit(url).path).lstrip("/") if is_ours else None
            if name in files:
                return URLFetcherResponse(url, files[name])
            if url not in own:
                raise ValueError(f"{url.removeprefix(BASE)} is not a file of this workspace")
            return URLFetcherResponse(url, own[url].read_bytes())

    return Fetcher()


# Each begins with plain signs, which are found in a hundredth of the time that it takes to look for a word's edge.
_NAMED = tuple(map(re.compile, (r"""src="([^"]*)\"""", r"""url\(\s*["']?([^"')]*)["']?\s*\)""", r"""@import\s+["']([^"']*)["']""")))


def named_in(text: str) -> Iterator[str]:
    """Names of the files that HTML or a style sheet asks for by a relative address."""
    for match in chain.from_iterable(pattern.finditer(text) for pattern in _NAMED):
        address = unescape(match[1])
        if address and not urlsplit(address).scheme and not address.startswith("#"):
            yield unquote(urlsplit(address).path).lstrip("/")


def files_of_templates(names: Iterable[str], root: Path) -> dict[str, bytes]:
    """Those of the named files that are in the workspace's templates/, by their address. Files outside are left out."""
    folder, found = root / "templates", {}
    for name in names:
        path = folder / name
        if inside(path, folder) and path.is_file():
            found[name] = path.read_bytes()
    return found
