"""The web pages in a real browser, from a disk: marking, keeping one's place, looking, and reading without a script."""

import pytest
from selenium.webdriver.common.by import By
from selenium.webdriver.common.keys import Keys
from tests.bind.copies import TINY, copy_of
from tests.web.browsers import one, started

from booklet.bind import book
from booklet.source.workspace import load


@pytest.fixture(scope="module")
def html(tmp_path_factory):
    root = copy_of(TINY, tmp_path_factory.mktemp("web") / "tiny")
    (index,) = book.build(load(root), ("html",))
    return index.parent


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
    one(page, "[data-do=begin]").click()
    one(page, ".bench [data-do=next]").click()
    assert one(page, "li.now").get_attribute("data-part") == one(page, "g.now").get_attribute("data-part") == "row-2"
    assert one(page, ".where").text.startswith("Row 2") and one(page, ".says").text in one(page, "li.now").text
    assert one(page, "g.done").get_attribute("data-part") == "row-1"


def test_marks_are_there_after_a_reload_and_pieces_are_counted_apart(page):
    one(page, "li[data-part=row-1] input").click()
    page.refresh()
    assert progress(page) == "1 of 9" and one(page, "li[data-part=row-1] input").is_selected()
    one(page, ".pieces input[value='2']").click()
    assert progress(page) == "0 of 9" and not one(page, "li[data-part=row-1] input").is_selected()


def test_a_changed_version_is_told_and_the_marks_wait_for_an_answer(page):
    one(page, "li[data-part=row-1] input").click()
    page.execute_script("for (const name of Object.keys(localStorage)) localStorage[name] = localStorage[name].replace('\"version\":\"', '\"version\":\"old-')")
    page.refresh()
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
    page.execute_script("""document.querySelector('.tools details').open = true;
        const choice = document.querySelector('[data-do=colourway]'); choice.value = 'own'; choice.dispatchEvent(new Event('change', {bubbles: true}));
        const input = document.querySelector('.own input'); input.value = '#123456'; input.dispatchEvent(new Event('input', {bubbles: true}));""")
    key = one(page, ".own input").get_attribute("data-key")
    page.refresh()
    shown = page.execute_script("return getComputedStyle(document.querySelector('.pane .f-' + arguments[0])).fill", key)
    assert shown == "rgb(18, 52, 86)"


def test_the_other_hand_has_words_and_marks_of_the_same_rows(page):
    words = one(page, ".row-words").text
    one(page, "li[data-part=row-1] input").click()
    one(page, ".ways a[data-hand=left]").click()
    assert one(page, ".row-words").text == words.replace("→", "←") != words and progress(page) == "1 of 9"


def test_no_page_is_wider_than_a_narrow_phone(browser, html):
    browser.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", {"width": 320, "height": 640, "deviceScaleFactor": 1, "mobile": False})
    try:
        for path in sorted(html.rglob("*.html")):
            browser.get(path.as_uri())
            assert browser.execute_script("return document.documentElement.scrollWidth") <= 320, path.name
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
