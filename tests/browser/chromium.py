"""Drive the system's own Chromium, headless: pages are opened from a file, with no network to be had.

``browser`` is a fixture; a test module imports it. Where there is no Chromium the tests skip and say so.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, Playwright, sync_playwright

PHONE = 360  # CSS pixels, the narrowest that is common
DESK = 1100
_NAMES = ("chromium", "chromium-browser", "google-chrome")


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Chromium, started once for a module."""
    with sync_playwright() as driver:
        started = launched(driver)
        if started is None:
            pytest.skip("Chromium is not installed here")
        yield started
        started.close()


def launched(driver: Playwright) -> Browser | None:
    """The system's own Chromium, started; None where there is none."""
    found = next(filter(None, map(shutil.which, _NAMES)), None)
    if found is None:
        return None
    # Chromium's sandbox refuses to run as root, as in a container.
    unboxed = ["--no-sandbox"] if os.geteuid() == 0 else []
    return driver.chromium.launch(executable_path=found, args=unboxed)


@contextmanager
def opened(
    browser: Browser, file: Path, *, width: int = DESK, dark: bool = False, script: bool = True
) -> Iterator[Page]:
    """A file in a window of its own. On leaving, fails if the page said anything on its console,
    or asked for anything but itself."""
    window = browser.new_context(
        viewport={"width": width, "height": 800},
        color_scheme="dark" if dark else "light",
        java_script_enabled=script,
        offline=True,
    )
    page = window.new_page()
    said: list[str] = []
    asked: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(file.as_uri())
    yield page
    window.close()
    assert not said, said
    assert asked == [file.as_uri()], asked


def overflow(page: Page) -> int:
    """By how many pixels the page is wider than its window; 0 where it fits."""
    return int(page.evaluate("document.documentElement.scrollWidth - window.innerWidth"))


def barriers(page: Page) -> list[str]:
    """What axe-core finds that keeps some people from reading the page, and where."""
    found = Axe().run(page).response["violations"]
    return [f"{each['id']}: {node['target']}" for each in found for node in each["nodes"]]


def pdf_of(page: Page, paper: str) -> bytes:
    """The page as it is printed, on "A4" or "Letter"."""
    return page.pdf(format=paper, print_background=True)
