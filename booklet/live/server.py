"""A server for the one who writes the patterns: on this computer alone, and for pages of its own alone.

A page elsewhere on the web could make a browser ask us (DNS rebinding, requests across sites), so the address in `Host` must be ours,
and a request that another site has caused is refused.
"""

from __future__ import annotations

import json
import os
import socketserver
from collections.abc import Callable
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import PurePosixPath
from urllib.parse import parse_qs, urlsplit

from ..errors import UnwritableOutput
from .site import Site

HERE = "127.0.0.1"
SCRIPT, EVENTS = "/~/live.js", "/~/events"    # no page has such an address
PULSE = 15.0      # seconds after which a silent stream says something, to notice that its browser is gone
NEXT_PORTS = 20   # tried after the usual one
LONGEST = 4096    # characters of an address
LONGEST_TAG = 35  # and of the name of a language (RFC 5646)
SAME_SITE = ("", "none", "same-origin")
TYPES = {".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml",
         ".woff2": "font/woff2", ".txt": "text/plain; charset=utf-8", ".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".png": "image/png", ".webp": "image/webp"}
MISSING = b'<!DOCTYPE html><html lang="en"><head><title>No such page</title></head><body><h1>There is no such page</h1><p><a href="/">All pages</a></p></body></html>'


class Server(ThreadingHTTPServer):
    """Serves a site. `script` gives what pages in a language run to follow it."""

    daemon_threads = True
    allow_reuse_address = os.name != "nt"    # there it would let two servers share a port

    def __init__(self, site: Site, script: Callable[[str], str], port: int) -> None:
        self.site, self.script = site, script
        super().__init__((HERE, port), Handler)
        self.hosts = {f"{name}:{self.server_port}" for name in (HERE, "localhost")} | ({HERE, "localhost"} if self.server_port == 80 else set())

    def server_bind(self) -> None:
        """Bind without asking for a name, which could ask the network."""
        socketserver.TCPServer.server_bind(self)
        self.server_name, self.server_port = self.server_address[:2]

    def handle_error(self, request, client_address) -> None:
        """A browser that goes away in the middle is no fault of ours."""


def served(site: Site, script: Callable[[str], str], port: int, is_wish: bool) -> Server:
    """A server on this port; if nobody wished for it, on the next one that is free. Raises UnwritableOutput where there is none."""
    for attempt in range(port, port + 1 if is_wish or not port else min(port + NEXT_PORTS, 65536)):
        try:
            return Server(site, script, attempt)
        except OSError as error:
            reason = (error.strerror or str(error)).lower()
    raise UnwritableOutput(f"port {port} cannot be used: {reason}", "name another with --port, or --port 0 for any that is free")


class Handler(BaseHTTPRequestHandler):
    """Answers one browser."""

    server: Server
    protocol_version = "HTTP/1.1"
    server_version, sys_version = "booklet", ""
    timeout = 60.0

    def do_GET(self) -> None:
        self._answer(with_body=True)

    def do_HEAD(self) -> None:
        self._answer(with_body=False)

    def log_message(self, *words) -> None:
        """The terminal is for what was built."""

    def _answer(self, with_body: bool) -> None:
        address = urlsplit(self.path) if len(self.path) <= LONGEST and self.path.startswith("/") else None
        if not self._is_ours():
            self._send(HTTPStatus.FORBIDDEN, b"This server answers requests from its own pages only.\n", ".txt", with_body)
        elif address is None:
            self._send(HTTPStatus.BAD_REQUEST, b"This address cannot be read.\n", ".txt", with_body)
        elif address.path == EVENTS and with_body:
            self._stream(parse_qs(address.query).get("page", ["/"])[0])
        elif address.path == SCRIPT:
            self._send(HTTPStatus.OK, self.server.script(address.query[:LONGEST_TAG]).encode(), ".js", with_body)
        else:
            self._page(address.path, with_body)

    def _is_ours(self) -> bool:
        """Whether the request names this very server, and no other site has caused it."""
        hosts, origin = self.headers.get_all("Host", []), self.headers.get("Origin")
        fetched, to_look = self.headers.get("Sec-Fetch-Site", ""), self.headers.get("Sec-Fetch-Mode") == "navigate"   # a link may lead here
        return (len(hosts) == 1 and hosts[0].lower() in self.server.hosts and (fetched in SAME_SITE or to_look)
                and (origin is None or origin.lower() in {f"http://{host}" for host in self.server.hosts}))

    def _page(self, path: str, with_body: bool) -> None:
        site = self.server.site
        name = site.name(path)
        content, kind = (site.content(name), PurePosixPath(name).suffix.lower()) if name else (MISSING, ".html")
        if kind == ".html":
            tag = f'<script src="{SCRIPT}?{site.language(name)}" data-digest="{site.digest(name)}" defer></script></head>'
            content = content.replace(b"</head>", tag.encode(), 1)
        self._send(HTTPStatus.OK if name else HTTPStatus.NOT_FOUND, content, kind, with_body)

    def _send(self, status: HTTPStatus, content: bytes, kind: str, with_body: bool) -> None:
        self.send_response(status)
        self._headers(TYPES.get(kind, "application/octet-stream"))
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        if with_body:
            self.wfile.write(content)

    def _headers(self, kind: str) -> None:
        for name, value in (("Content-Type", kind), ("Cache-Control", "no-store"), ("X-Content-Type-Options", "nosniff"),
                            ("Cross-Origin-Resource-Policy", "same-origin"), ("Content-Security-Policy", "frame-ancestors 'self'")):
            self.send_header(name, value)

    def _stream(self, page: str) -> None:
        """Server-sent events: every edition, and whether it has changed this page."""
        self.close_connection = True
        self.send_response(HTTPStatus.OK)
        self._headers("text/event-stream; charset=utf-8")
        self.send_header("Connection", "close")
        self.end_headers()
        site, seen = self.server.site, -1
        while site.is_open:
            edition = site.edition
            if edition == seen:
                self.wfile.write(b": still here\n\n")
            else:
                news = {"digest": site.digest(site.name(page)), **site.report.told()}
                self.wfile.write(f"data: {json.dumps(news)}\n\n".encode())
            self.wfile.flush()
            seen = edition
            site.wait(seen, PULSE)
