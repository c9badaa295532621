"""booklet watch from end to end: a real server, a real browser, and files that are saved, broken, and taken away."""

import asyncio
import http.client
import signal
import subprocess
import sys
from contextlib import closing, contextmanager
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from click.testing import CliRunner
from selenium.webdriver.support.ui import WebDriverWait
from tests.bind.copies import TINY, copy_of
from tests.web.browsers import one, started

from booklet.bind.book import web
from booklet.bind.pdf import working_in
from booklet.bind.press.cache import KEPT
from booklet.bind.press.workshop import HereAndNow, Workshop
from booklet.bind.web.orders import ArticlesOrder
from booklet.cli import main
from booklet.live import rebuild
from booklet.live.rebuild import Rebuilder
from booklet.live.sources import is_source
from booklet.source.workspace import load

PATIENCE = 60    # seconds that a busy computer may take; nothing is judged by it
# A shell that starts a job in the background has it ignore ctrl-C; here it is to be heard.
RUN = "import signal; signal.signal(signal.SIGINT, signal.default_int_handler); from booklet.cli import main; main()"


@contextmanager
def watching(root):
    """The running command and its address."""
    with subprocess.Popen([sys.executable, "-c", RUN, "-C", root, "watch", "--port", "0"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as command:
        try:
            yield command, command.stdout.readline().strip()
        finally:
            command.kill()


@pytest.fixture(scope="module")
def root(tmp_path_factory):
    return copy_of(TINY, tmp_path_factory.mktemp("watch") / "tiny")


@pytest.fixture(scope="module")
def address(root):
    with watching(root) as (command, address):
        yield address


@pytest.fixture(scope="module")
def browser(address):
    driver = started("--window-size=900,700")
    driver.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": [{"name": "prefers-reduced-motion", "value": "reduce"}]})   # no place is measured while the page is moving
    driver.get(address)
    until(driver, "document.querySelector('.gallery')")
    yield driver
    driver.quit()


def until(browser, script):
    """Wait until an expression holds on the page, which may be loaded anew meanwhile."""
    WebDriverWait(browser, PATIENCE, poll_frequency=0.1).until(lambda page: page.execute_script(f"return document.readyState === 'complete' && Boolean({script})"))


def found(text):
    return f"document.querySelector('#booklet-live')?.shadowRoot.textContent.includes({text!r})"


@contextmanager
def changed(root, old, new, name="morning-cloud"):
    """A file of the book, saved with a change and saved again as it was."""
    path = root / "patterns" / f"{name}.yaml"
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")
    yield
    path.write_text(text, "utf-8")


def test_a_saved_change_reaches_the_page_which_keeps_its_place(root, address, browser):
    browser.get(f"{address}morning-cloud")
    one(browser, "[data-do=begin]").click()
    browser.execute_script("document.querySelector('li[data-part=strand-2]').scrollIntoView({block: 'start'}); window.before = true")
    top = browser.execute_script("return document.querySelector('li[data-part=strand-2]').getBoundingClientRect().top")
    with changed(root, "summary: A cloud of six stitches", "summary: A much longer summary of this cloud, so that all below it moves. A cloud of six stitches"):
        until(browser, "document.querySelector('.summary').textContent.includes('much longer')")
        assert browser.execute_script("return !window.before && !document.querySelector('.bench').hidden")
        until(browser, f"Math.abs(document.querySelector('li[data-part=strand-2]').getBoundingClientRect().top - {top}) < 3")
    until(browser, "!document.querySelector('.summary').textContent.includes('much longer')")


def test_a_page_that_has_not_changed_is_left_alone(root, address, browser):
    browser.get(f"{address}glossary.html")
    browser.execute_script("window.before = true")
    with changed(root, "drop: 2", "drop: 2 "), changed(root, "level: intermediate", "level: intermedate"):
        until(browser, found("morning-cloud.yaml:4:8"))
        assert browser.execute_script("return window.before")
    until(browser, f"!({found('as they last were')})")
    assert browser.execute_script("return window.before")


def test_a_broken_file_leaves_the_pages_and_the_overlay_says_where(root, address, browser):
    browser.get(f"{address}morning-cloud")
    with changed(root, "6W 2B > 3B", "6W 2B > 3Q"):
        until(browser, found("as they last were"))
        assert browser.execute_script("return " + found("patterns/morning-cloud.yaml:29:"))
        assert one(browser, "h1").text == "Morning Cloud" and len(browser.find_elements("css selector", ".strand-words")) == 6
    until(browser, f"!({found('as they last were')})")


def test_a_folder_that_is_gone_may_come_back(root, address, browser):
    browser.get(address)
    (root / "patterns").rename(root / "elsewhere")
    until(browser, found("the folder patterns/ is gone"))
    (root / "elsewhere").rename(root / "patterns")
    until(browser, f"!({found('is gone')}) && document.querySelectorAll('.gallery li').length === 2")


def test_only_what_has_changed_is_made_again(tmp_path):
    root = copy_of(TINY, tmp_path / "tiny")
    builder, html = Rebuilder(root), root / "build" / "html"
    assert builder.build().report.head == "" and builder.made == ["morning-cloud", "evening-star"]
    before = {path: path.stat().st_mtime_ns for path in html.rglob("*.*")}
    with changed(root, "title: Morning Cloud", "title: Morning Haze"):
        assert builder.build().report.head == "" and builder.made == ["morning-cloud"]
    assert "Morning Haze" in (html / "morning-cloud.html").read_text("utf-8")
    assert (html / "booklet.css").stat().st_mtime_ns == before[html / "booklet.css"]
    with changed(root, "drop: 2", "drop: two"):
        built = builder.build()
        assert built.report.is_bad and built.report.head == "The pages of morning-cloud are as they last were without an error." and builder.made == []
        assert "Morning Haze" in (html / "morning-cloud.html").read_text("utf-8")


def test_what_many_have_drawn_is_kept_for_the_next_time_and_the_pages_are_those_of_a_build(tmp_path, monkeypatch):
    root, drawn, fill = copy_of(TINY, tmp_path / "tiny"), [], ArticlesOrder.fill
    monkeypatch.setattr(ArticlesOrder, "fill", lambda order: drawn.append(order.pattern.slug) or fill(order))
    monkeypatch.setattr(rebuild, "web_workers", lambda *_: HereAndNow())

    def first():
        with Rebuilder(root) as builder:
            return builder, builder.build().files

    builder, files = first()
    assert sorted(drawn) == ["evening-star", "morning-cloud"]
    assert first()[1] == files and len(drawn) == 2
    with working_in(Workshop(root / KEPT, HereAndNow)):
        assert asyncio.run(web(load(root), "en")) == files and len(drawn) == 2
    with changed(root, "title: Morning Cloud", "# A remark.\ntitle: Morning Cloud"):
        assert builder.build().files == files and builder.made == []
    with changed(root, "title: Morning Cloud", "title: Morning Haze"):
        assert builder.build().files != files and drawn[2:] == ["morning-cloud"]
        first()
        assert drawn[3:] == ["morning-cloud"]   # a change that is worked on is kept by nobody else
    monkeypatch.setattr(rebuild, "FEW", 1)
    with changed(root, "year: 2026", "year: 2027", "book"):
        assert builder.build().report.head == "" and len(builder.made) == 2 and len(drawn) == 6
        first()
        assert len(drawn) == 6


def asked(address, path, **headers):
    with closing(http.client.HTTPConnection(urlsplit(address).netloc, timeout=PATIENCE)) as connection:
        connection.request("GET", path, headers=headers)
        answer = connection.getresponse()
        return answer.status, answer.read()


@pytest.mark.parametrize("path", ["/../../../etc/passwd", "/%2e%2e/patterns/book.yaml", "/..%2f..%2fpatterns/book.yaml", "//etc/passwd", "/patterns/book.yaml", "/%00"])
def test_error_nothing_but_pages_can_be_reached(address, browser, path):
    status, content = asked(address, path)
    assert status == 404 and b"There is no such page" in content


@pytest.mark.parametrize("headers", [{"Host": "pages.example"}, {"Host": "127.0.0.1.pages.example"}, {"Host": "127.0.0.1:1"}, {"Origin": "http://pages.example"},
                                     {"Origin": "null"}, {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors"}])
def test_error_another_site_cannot_ask_through_the_browser(address, browser, headers):
    for path in ("/", "/~/events", "/~/live.js"):
        assert asked(address, path, **headers)[0] == 403
    assert asked(address, "/", Host=urlsplit(address).netloc.replace("127.0.0.1", "localhost"))[0] == 200


def test_error_a_port_that_is_taken(root, address):
    port = urlsplit(address).port
    result = CliRunner().invoke(main, ["-C", str(root), "watch", "--port", str(port)])
    assert result.exit_code == 2
    assert result.stderr == f"booklet: port {port} cannot be used: address already in use (name another with --port, or --port 0 for any that is free)\n"


@pytest.mark.parametrize(("name", "is_read"), [("rain.yaml", True), ("pages/hello.md", True), ("photos/rain.JPG", True), (".rain.yaml.swp", False), ("rain.yaml~", False),
                                               ("#rain.yaml#", False), (".#rain.yaml", False), ("rain.yaml.tmp", False), ("4913", False), (".rain.yaml.31337", False)])
def test_what_editors_write_beside_a_file_is_no_source(name, is_read):
    assert is_source(Path("patterns") / name) is is_read


def test_it_starts_on_a_broken_book_and_stops_with_ctrl_c(tmp_path):
    root = copy_of(TINY, tmp_path / "tiny")
    (root / "patterns" / "book.yaml").write_text("title: [", "utf-8")
    with watching(root) as (command, address):
        line = command.stderr.readline()
        assert line.startswith("patterns/book.yaml:") and "error" in line
        assert asked(address, "/")[0] == 404
        command.send_signal(signal.SIGINT)
        said = command.communicate(timeout=PATIENCE)[1]
    assert said.splitlines()[-1] == "booklet: stopped" and command.returncode == 0


def test_the_overlay_speaks_the_language_of_the_page(address, browser):
    assert b'src="/~/live.js?en"' in asked(address, "/glossary.html")[1]
    scripts = {tag: asked(address, f"/~/live.js?{tag}")[1].decode() for tag in ("en", "de-AT", "", "xx", "..%2f..")}
    assert "_(\"Close\")" in scripts["en"] == scripts[""] == scripts["xx"] == scripts["..%2f.."]
    assert "_(\"Schließen\")" in scripts["de-AT"] and "Die Seiten von {pages} sind so" in scripts["de-AT"]
