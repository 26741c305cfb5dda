"""A phone's browser: the system's Chromium without a screen, as large as a hand, driven from a thread of its own."""

import os
import shutil
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager

from playwright.sync_api import sync_playwright

NAMES = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
SIZE = {"width": 390, "height": 844}
FLAGS = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync",
)  # fmt: skip
NONE = (
    "The journey of the phone needs the browser Chromium, and none was found. Install it (on Debian the package"
    " chromium), or name its program in INSPECTOR_CHROMIUM."
)


def chromium():
    """Where the browser is."""
    found = os.environ.get("INSPECTOR_CHROMIUM") or next(filter(None, map(shutil.which, NAMES)), None)
    assert found, NONE
    return found


class Browser:
    """The browser in a thread of its own, without a screen, on an empty profile."""

    def __init__(self):
        self.hand = ThreadPoolExecutor(1)
        self.hand.submit(self._start).result()

    def _start(self):
        self.playwright = sync_playwright().start()
        self.chromium = self.playwright.chromium.launch(
            executable_path=chromium(), headless=True, args=list(FLAGS), chromium_sandbox=False
        )

    def close(self):
        self.hand.submit(self._end).result()
        self.hand.shutdown()

    def _end(self):
        self.chromium.close()
        self.playwright.stop()


@contextmanager
def browsing():
    made = Browser()
    try:
        yield made
    finally:
        made.close()


class Phone:
    """One phone: what is asked of its page is done in the browser's thread, while the window goes on living."""

    def __init__(self, qtbot, browser):
        self._qtbot, self._browser = qtbot, browser
        self.complaints = []
        self.do(self._start)

    def do(self, act, *given, timeout=30_000):
        """What the act gives; the window's events are handled meanwhile."""
        future = self._browser.hand.submit(act, *given)
        self._qtbot.waitUntil(future.done, timeout=timeout)
        return future.result()

    def _start(self):
        self.context = self._browser.chromium.new_context(
            viewport=SIZE, device_scale_factor=2, has_touch=True, is_mobile=True, color_scheme="light"
        )
        self.context.set_default_timeout(15_000)
        self.page = self.context.new_page()
        self.page.on("console", lambda said: self.complaints.append(said.text) if said.type == "error" else None)
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))

    def close(self):
        self.do(self.context.close)

    # hands and eyes

    def visit(self, address):
        """The status with which the address answered."""
        return self.do(lambda: self.page.goto(address).status)

    def tap(self, selector):
        self.do(lambda: self.page.tap(selector))

    def choose(self, selector, *files, timeout=60_000):
        """These files are picked; the page has all of them."""
        self.do(lambda: self.page.set_input_files(selector, [str(file) for file in files]), timeout=timeout)

    def open_camera(self, selector):
        """The key is tapped and the phone's camera, or its list of pictures, lies over the page; gives it."""

        def opened():
            with self.page.expect_file_chooser() as chooser:
                self.page.tap(selector)
            return chooser.value

        return self.do(opened)

    def text(self, selector):
        return self.do(lambda: self.page.inner_text(selector))

    def sees(self, selector, words, timeout=15_000):
        """Waits until these words stand there."""
        found = self.page.locator(selector, has_text=words)
        self.do(lambda: found.first.wait_for(timeout=timeout), timeout=timeout + 5000)

    def evaluate(self, script):
        return self.do(lambda: self.page.evaluate(script))

    def fates(self):
        """The fate of each photograph by its name, as the page tells it."""
        rows = self.evaluate(
            "[...document.querySelectorAll('#rows li')].map(row => [row.querySelector('.file').textContent,"
            " row.dataset.fate, row.querySelector('.for').textContent, row.querySelector('.fate').textContent])"
        )
        return {name: (fate, item, words) for name, fate, item, words in rows}

    def picture(self, path):
        self.do(lambda: self.page.screenshot(path=str(path)))

