"""The browser that the tests drive."""

from shutil import which

from selenium import webdriver
from selenium.webdriver.chrome.service import Service
from selenium.webdriver.common.by import By


def started(*extra):
    """A browser without a window. It is an error, not a skip, if there is none."""
    options = webdriver.ChromeOptions()
    options.binary_location = which("chromium") or which("google-chrome")
    for word in ("--headless=new", "--no-sandbox", "--disable-gpu", *extra):
        options.add_argument(word)
    return webdriver.Chrome(options=options, service=Service(which("chromedriver")))


def one(page, selector):
    return page.find_element(By.CSS_SELECTOR, selector)
