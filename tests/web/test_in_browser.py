"""The web pages in a real browser, from a disk: marking, keeping one's place, looking, and reading without a script."""

import shutil
import subprocess
from base64 import b64decode

import pytest
from click.testing import CliRunner
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys
from selenium.webdriver.support.ui import WebDriverWait
from tests.bind.copies import TINY, copy_of
from tests.web.browsers import one, started
from tests.web.npm import file_of

from booklet.bind import book
from booklet.cli import main
from booklet.source.workspace import load

PATIENCE = 60    # seconds that a busy computer may take; nothing is judged by it


@pytest.fixture(scope="module")
def root(tmp_path_factory):
    return copy_of(TINY, tmp_path_factory.mktemp("web") / "tiny")


@pytest.fixture(scope="module")
def html(root):
    (index,) = book.build(load(root), ("html",))
    return index.parent


@pytest.fixture(scope="module")
def sold(root, tmp_path_factory):
    """One pattern in one file, in a folder where nothing else is."""
    result = CliRunner().invoke(main, ["-C", str(root), "single", "morning-cloud", "--one-file"])
    assert (result.exit_code, result.stdout) == (0, "build/single/morning-cloud.html\n")
    return (root / result.stdout.strip()).rename(tmp_path_factory.mktemp("sold") / "morning-cloud.html")


@pytest.fixture(scope="module")
def browser():
    driver = started()
    yield driver
    driver.quit()


@pytest.fixture
def page(browser, html):
    browser.get((html / "morning-cloud.html").as_uri())
    browser.execute_script("localStorage.clear()")
    browser.refresh()
    return browser


def progress(page):
    return one(page, ".progress").text.split(" rows")[0]


def test_the_current_row_is_lit_in_chart_and_words_together(page):
    assert page.find_elements(By.CSS_SELECTOR, ".at-work") == []
    one(page, "[data-do=begin]").click()
    one(page, ".bench [data-do=next]").click()
    assert one(page, "li.now").get_attribute("data-part") == one(page, "g.now").get_attribute("data-part") == "row-2"
    assert one(page, ".where").text.startswith("Row 2") and one(page, ".says").text in one(page, "li.now").text
    assert one(page, "g.done").get_attribute("data-part") == "row-1"
    page.refresh()
    assert one(page, ".at-work .where").text.startswith("Row 2")
    one(page, ".bench [data-do=end]").click()
    page.refresh()
    assert page.find_elements(By.CSS_SELECTOR, ".at-work") == [] and not one(page, ".bench").is_displayed()


def test_marks_are_there_after_a_reload_and_pieces_are_counted_apart(page):
    one(page, "li[data-part=row-1] input").click()
    page.refresh()
    assert progress(page) == "1 of 9" and one(page, "li[data-part=row-1] input").is_selected()
    one(page, ".pieces input[value='2']").click()
    assert progress(page) == "0 of 9" and not one(page, "li[data-part=row-1] input").is_selected()


def test_marks_are_cleared_after_a_question(page):
    one(page, "li[data-part=row-1] input").click()
    for answer, left in (("dismiss", "1 of 9"), ("accept", "0 of 9")):
        one(page, ".along [data-do=clear-marks]").click()
        getattr(page.switch_to.alert, answer)()
        assert progress(page) == left


def grown_old(page):
    """The page again, after what is kept has become that of another version."""
    page.execute_script("for (const name of Object.keys(localStorage)) localStorage[name] = localStorage[name].replace('\"version\":\"', '\"version\":\"old-')")
    page.refresh()


def test_a_changed_version_is_told_and_the_marks_wait_for_an_answer(page):
    one(page, "[data-do=begin]").click()
    one(page, ".bench [data-do=end]").click()
    grown_old(page)
    assert not one(page, ".news").is_displayed()    # where nothing is marked there is nothing to tell
    one(page, "li[data-part=row-1] input").click()
    grown_old(page)
    assert "Your marks are of version old-" in one(page, ".news").text
    one(page, "[data-do=keep-marks]").click()
    page.refresh()
    assert not one(page, ".news").is_displayed() and progress(page) == "1 of 9"


def test_the_keyboard_is_enough(page):
    one(page, "[data-do=begin]").send_keys(Keys.ENTER)
    page.switch_to.active_element.send_keys(Keys.ENTER)
    page.switch_to.active_element.send_keys(Keys.ARROW_RIGHT)
    assert progress(page) == "2 of 9"
    page.switch_to.active_element.send_keys(Keys.ARROW_LEFT)
    assert progress(page) == "1 of 9"
    one(page, ".pane").send_keys(Keys.ARROW_RIGHT)
    assert ", stitch " in one(page, ".zoom output").text
    one(page, ".bench").find_element(By.CSS_SELECTOR, "[data-do=next]").send_keys(Keys.ESCAPE)
    assert not one(page, ".bench").is_displayed()


def test_a_bead_of_the_key_stands_out(page):
    button = one(page, ".key button")
    button.click()
    key = button.find_element(By.TAG_NAME, "b").text
    chosen = page.find_elements(By.CSS_SELECTOR, ".chosen")
    assert chosen and {drawn.get_attribute("data-key") or drawn.text for drawn in chosen} == {key}
    assert button.get_attribute("aria-pressed") == "true" and " in this chart" in one(page, ".zoom output").text


def test_colours_of_ones_own_are_kept(page):
    choose_colours(page, "own", "#123456")
    key = one(page, ".own input").get_attribute("data-key")
    page.refresh()
    shown = page.execute_script("return getComputedStyle(document.querySelector('.pane .f-' + arguments[0])).fill", key)
    assert shown == "rgb(18, 52, 86)"


def choose_colours(page, choice, own="#123456"):
    """Choose a colourway; of the maker's own colours the first is `own`."""
    page.execute_script("""const article = Array.from(document.querySelectorAll('article')).find(article => article.offsetHeight);
        const choice = article.querySelector('[data-do=colourway]'); choice.value = arguments[0]; choice.dispatchEvent(new Event('change', {bubbles: true}));
        const input = article.querySelector('.own input'); input.value = arguments[1]; input.dispatchEvent(new Event('input', {bubbles: true}));""", choice, own)


def step_pictures(page):
    return page.execute_script("""return Array.from(document.querySelectorAll('.step-picture img'), image => image.closest('article').offsetHeight ? image.src : '').filter(Boolean)""")


def in_colours(source):
    """The text of a step picture that was written anew; empty where it is still the file."""
    return b64decode(source.split("#")[0].split(",")[1]).decode("ascii") if source.startswith("data:") else ""


def test_a_colourway_reaches_names_charts_and_step_pictures(page):
    names = page.execute_script("return Array.from(document.querySelectorAll('.materials .bead'), told => told.textContent)")
    choose_colours(page, "dusk")
    WebDriverWait(page, PATIENCE).until(lambda page: all("--b-B:#5e3a5b" in in_colours(source) for source in step_pictures(page)))
    assert page.execute_script("return Array.from(document.querySelectorAll('.materials .bead'), told => told.textContent)") == ["plum" if name == "storm blue" else name for name in names]
    assert page.execute_script("return getComputedStyle(document.querySelector('.pane .f-B')).fill") == "rgb(94, 58, 91)"
    page.refresh()
    WebDriverWait(page, PATIENCE).until(lambda page: all("--b-B:#5e3a5b" in in_colours(source) for source in step_pictures(page)))
    assert page.execute_script("return Array.from(document.querySelectorAll('.step-picture img'), image => image.decode()).length") == len(step_pictures(page))
    choose_colours(page, "")
    WebDriverWait(page, PATIENCE).until(lambda page: all(source.endswith(".svg") for source in step_pictures(page)))
    assert page.execute_script("return document.querySelector('.key .bead').textContent") == names[0]


def test_the_other_hand_has_words_and_marks_of_the_same_rows(page):
    words = one(page, ".row-words").text
    one(page, "li[data-part=row-1] input").click()
    one(page, ".ways a[data-hand=left]").click()
    assert one(page, ".row-words").text == words.replace("→", "←") != words and progress(page) == "1 of 9"


OVER_EACH_OTHER = """return Array.from(document.querySelectorAll('tr'), row => Array.from(row.cells, cell => {
    const range = document.createRange(); range.selectNodeContents(cell); return [cell.textContent, range.getBoundingClientRect()]; }))
    .flatMap(cells => cells.filter(([text, box], at) => cells.some(([_, other], next) => next > at && box.right > other.left + 1 && other.right > box.left + 1
        && box.bottom > other.top + 1 && other.bottom > box.top + 1)).map(([text]) => text))"""


def test_no_page_is_wider_than_a_narrow_phone(browser, html):
    browser.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {"width": 320, "height": 640, "deviceScaleFactor": 1, "mobile": False})
    try:
        for path in sorted(html.rglob("*.html")):
            browser.get(path.as_uri())
            assert browser.execute_script("return document.documentElement.scrollWidth") <= 320, path.name
            assert browser.execute_script(OVER_EACH_OTHER) == [], path.name
    finally:
        browser.execute_cdp_cmd("Emulation.clearDeviceMetricsOverride", {})


def test_everything_can_be_read_without_a_script(browser, html):
    browser.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
    try:
        browser.get((html / "morning-cloud.html").as_uri())
        assert len([row for row in browser.find_elements(By.CSS_SELECTOR, ".row-words, .strand-words") if row.is_displayed()]) == 9
        assert one(browser, ".pane svg").is_displayed() and not one(browser, ".tools").is_displayed()
    finally:
        browser.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": False})


def test_the_thread_of_a_step_goes_on_action_by_action(page):
    page.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": [{"name": "prefers-reduced-motion", "value": "reduce"}]})
    box = one(page, ".step-picture[data-moves]")
    image, (back, on), last = one(box, "img"), box.find_elements(By.TAG_NAME, "button"), int(box.get_attribute("data-moves"))
    page.execute_script("arguments[0].scrollIntoView()", box)
    seen = []
    for number in range(1, last + 1):
        on.click()
        seen.append(image.screenshot_as_png)
        assert one(box, "output").text.startswith(f"{number} p") and image.get_attribute("src").endswith(f".svg#s{number}")
    assert last == 3 and len(set(seen)) == last
    back.click()
    page.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": []})
    assert image.get_attribute("src").endswith(".svg#s2")
    back.click()
    assert image.get_attribute("src").endswith(".svg#p1")


def shown_articles(browser):
    return [article.get_attribute("id") for article in browser.find_elements(By.TAG_NAME, "article") if article.is_displayed()]


def test_one_file_opens_from_a_disk_and_needs_nothing_else(browser, sold):
    browser.get(sold.as_uri())
    browser.execute_script("localStorage.clear()")
    browser.get("about:blank")
    browser.get(sold.as_uri())
    loaded = browser.execute_script("return performance.getEntriesByType('resource').map(entry => entry.name.slice(0, 5))")
    assert set(loaded) <= {"data:"} and [path.name for path in sold.parent.iterdir()] == ["morning-cloud.html"]
    assert browser.execute_async_script("document.fonts.ready.then(() => arguments[0](document.fonts.check('16px \"Booklet Sans\"') && document.fonts.size))") == 5
    assert browser.execute_script("return Array.from(document.querySelectorAll('img'), image => image.decode()).length") == len(browser.find_elements(By.CSS_SELECTOR, "img"))
    assert shown_articles(browser) == ["morning-cloud"]
    words = one(browser, ".row-words").text
    one(browser, "li[data-part=row-1] input").click()
    one(browser, "#morning-cloud .ways a[data-hand=left]").click()
    assert shown_articles(browser) == ["left-morning-cloud"]
    assert one(browser, "#left-morning-cloud .row-words").text == words.replace("→", "←") != words
    assert one(browser, "#left-morning-cloud .progress").text.startswith("1 of 9")
    browser.get("about:blank")
    browser.get(sold.as_uri())
    assert shown_articles(browser) == ["left-morning-cloud"]
    choose_colours(browser, "own")
    WebDriverWait(browser, PATIENCE).until(lambda page: all(":#123456;" in in_colours(source) for source in step_pictures(page)))
    assert [entry for entry in browser.get_log("browser") if entry["level"] == "SEVERE"] == []


def test_one_file_can_be_read_without_a_script(browser, sold):
    browser.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": True})
    try:
        browser.get(sold.as_uri())
        assert shown_articles(browser) == ["morning-cloud"]
        one(browser, "#morning-cloud .ways a[data-hand=left]").click()
        assert shown_articles(browser) == ["left-morning-cloud"]
        assert len([row for row in browser.find_elements(By.CSS_SELECTOR, ".row-words, .strand-words") if row.is_displayed()]) == 9
        assert len(browser.find_elements(By.CSS_SELECTOR, "details.page")) == 4
    finally:
        browser.execute_cdp_cmd("Emulation.setScriptExecutionDisabled", {"value": False})


AXE, VNU = "axe-core@4.14.1", "vnu-jar@26.9.27"
AT_WORK = """for (const details of document.querySelectorAll('details')) details.open = true;
    const choice = document.querySelector('[data-do=colourway]'); choice.value = 'own'; choice.dispatchEvent(new Event('change', {bubbles: true}));
    for (const selector of ['li[data-part] input', '[data-do=begin]', '.key button', '.moves button']) document.querySelector(selector).click();"""


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_everybody_can_use_the_pages(request, browser, html, sold, theme):
    """Source: Web Content Accessibility Guidelines 2.2 (W3C), as the rules of axe-core check them: none is broken, before and at work."""
    axe, checked = file_of(request, AXE, "axe.min.js").read_text("utf-8"), 0
    browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": [{"name": "prefers-color-scheme", "value": theme}, {"name": "prefers-reduced-motion", "value": "reduce"}]})
    try:
        for path in (*(html / name for name in ("index.html", "morning-cloud.html", "glossary.html", "before-you-begin.html", "hello.html")), sold):
            browser.get(path.as_uri())
            browser.execute_script("localStorage.clear()")
            browser.execute_script(axe)
            for script in ("", AT_WORK) if path.name == "morning-cloud.html" else ("",):
                browser.execute_script(script)
                result = browser.execute_async_script("""const [ofAll, done] = arguments;   // what is open at work may lie over other targets, until one scrolls
                    axe.run(document, {rules: {'target-size': {enabled: ofAll}}, resultTypes: ['violations']}).then(result => done([result.violations, result.passes.length]))""", not script)
                assert [(rule["id"], [node["html"] for node in rule["nodes"]]) for rule in result[0]] == [], path.name
                checked += result[1]
    finally:
        browser.execute_cdp_cmd("Emulation.setEmulatedMedia", {"features": []})
    assert checked > 100


def test_every_page_and_every_picture_is_valid(request, html, sold):
    """Source: HTML Living Standard (WHATWG) and SVG 2 (W3C), as the Nu Html Checker reads them."""
    java = shutil.which("java")
    if java is None:
        pytest.skip("Java is not installed: no page is checked for validity in this run")
    jar = file_of(request, VNU, "build/dist/vnu.jar")
    pages, pictures = (sorted(str(path) for path in html.rglob(f"*.{kind}")) for kind in ("html", "svg"))
    assert len(pages) > 10 and len(pictures) > 10
    command = [java, "-XX:TieredStopAtLevel=1", "-jar", jar, "--also-check-svg", *pages, *pictures, str(sold)]
    assert subprocess.run(command, capture_output=True, text=True).stderr == ""
    wrong = html / "wrong.html"
    wrong.write_text("<!DOCTYPE html><html lang=en><title>x</title><p><b></p>", "utf-8")
    assert subprocess.run([java, "-XX:TieredStopAtLevel=1", "-jar", jar, wrong], capture_output=True).returncode == 1
    wrong.unlink()
