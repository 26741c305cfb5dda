"""The page in a phone's browser: everything in reach at any size, and what breaks off is sent again by itself."""

from contextlib import contextmanager
from dataclasses import replace
from time import monotonic

import pytest

from inspector.phone.clock import seconds
from tests.phone.browser import browsing
from tests.phone.hosts import VIEW, opened

SHAPES = ((360, 640), (390, 844), (844, 390))
LONG = replace(
    VIEW, machine="Brackwater Heron 600 with the long name that somebody gave it", mark="doubt",
    name="Rear wheel rim, spokes and nipples with the adjuster-plates-and-lock-nuts-of-the-springing",
    question="Does the rim carry a date, and is every spoke of one kind? " * 3, have="3 photographs are here",
    caution="It must stand firmly on its stand or be held before you crouch near it.",
)  # fmt: skip
ROWS = "[...document.querySelectorAll('#rows li')].map(row => row.dataset.fate)"
NAME_HIGH = """(() => { const words = document.createRange();
    words.selectNodeContents(document.querySelector("#rows .file")); return words.getBoundingClientRect().height })()"""
TARGET = 72 - 0.5  # of a phone's pixels, some 12 mm


@pytest.fixture(scope="module")
def browser():
    with browsing() as made:
        yield made


@contextmanager
def shown(browser, page, size):
    """The page as a phone of this size shows it, and a way to do things in the browser's thread."""

    def do(act):
        return browser.hand.submit(act).result(60)

    def start():
        context = browser.chromium.new_context(
            viewport={"width": size[0], "height": size[1]}, has_touch=True, is_mobile=True
        )
        tab = context.new_page()
        tab.goto(f"{page.origin}/{page.code}")
        tab.wait_for_selector("#open:not([hidden])")
        return tab

    tab = do(start)
    try:
        yield tab, do
    finally:
        do(tab.context.close)


def until(do, tab, script, wanted):
    """Waits until the page says this."""
    end = monotonic() + 40
    while monotonic() < end:
        if (said := do(lambda: tab.evaluate(script))) == wanted:
            return
        do(lambda: tab.wait_for_timeout(100))
    raise AssertionError(f"{said}, and not {wanted}")


def files(folder, count):
    made = [folder / f"IMG_{n:04}.jpg" for n in range(count)]
    for n, file in enumerate(made):
        file.write_bytes(b"\xff\xd8" + bytes([n]) * 50_000)
    return [str(file) for file in made]


@pytest.mark.parametrize("size", SHAPES, ids=str)
def test_long_names_leave_the_keys_in_sight_and_nothing_sideways(browser, tmp_path, size):
    with opened(clock=seconds) as page, shown(browser, page, size) as (tab, do):
        page.server.show(LONG)
        do(lambda: tab.get_by_text(LONG.caution).wait_for())
        assert do(lambda: tab.evaluate("document.documentElement.scrollWidth")) == size[0]
        foot = do(lambda: tab.locator("#foot").bounding_box())
        for key in ("#shoot", "#choose"):
            box = do(lambda key=key: tab.locator(key).bounding_box())
            assert min(box["width"], box["height"]) >= TARGET
            assert box["y"] + box["height"] <= foot["y"]
        assert do(lambda: tab.locator("#caution").bounding_box())["y"] < box["y"]
        do(lambda: tab.set_input_files("#several", files(tmp_path, 3)))
        until(do, tab, ROWS, ["kept"] * 3)
        assert do(lambda: tab.evaluate(NAME_HIGH)) < 40  # one line
        assert do(lambda: tab.inner_text("#count")) == "3 of 3 kept"


def test_what_broke_off_is_sent_again_when_the_computer_is_heard_and_each_comes_once(browser, tmp_path):
    with opened(clock=seconds) as page, shown(browser, page, SHAPES[1]) as (tab, do):
        do(lambda: tab.context.set_offline(True))
        do(lambda: tab.set_input_files("#several", files(tmp_path, 12)))
        do(lambda: tab.wait_for_timeout(1500))
        assert do(lambda: tab.evaluate(ROWS)).count("waiting") >= 11  # one may be on its way just then
        assert page.desk.sent == []
        do(lambda: tab.context.set_offline(False))
        until(do, tab, ROWS, ["kept"] * 12)
        assert sorted(sent.name for sent in page.desk.sent) == [f"IMG_{n:04}.jpg" for n in range(12)]


def test_what_stands_still_on_its_way_is_given_up_and_sent_again(browser, tmp_path):
    with opened(clock=seconds) as page, shown(browser, page, SHAPES[1]) as (tab, do):
        held = []
        do(tab.clock.install)
        do(tab.reload)
        do(lambda: tab.wait_for_selector("#open:not([hidden])"))
        do(lambda: tab.route("**/photograph*", lambda route: route.continue_() if held else held.append(route)))
        do(lambda: tab.set_input_files("#several", files(tmp_path, 1)))
        do(lambda: tab.wait_for_timeout(300))
        assert len(held) == 1
        do(lambda: tab.clock.run_for(31_000))
        do(lambda: tab.clock.run_for(2_000))
        until(do, tab, ROWS, ["kept"])
        assert len(page.desk.sent) == 1


def test_what_breaks_off_again_and_again_is_told_and_sent_once_more_by_hand(browser, tmp_path):
    with opened(clock=seconds) as page, shown(browser, page, SHAPES[1]) as (tab, do):
        do(tab.clock.install)
        do(tab.reload)
        do(lambda: tab.wait_for_selector("#open:not([hidden])"))
        do(lambda: tab.route("**/photograph*", lambda route: route.abort()))
        do(lambda: tab.set_input_files("#several", files(tmp_path, 1)))
        for _ in range(4):
            do(lambda: tab.wait_for_timeout(200))
            do(lambda: tab.clock.run_for(9_500))
        until(do, tab, ROWS, ["unsent"])
        assert "IMG_0000.jpg could not be sent" in do(lambda: tab.inner_text("#rows .fate"))
        do(lambda: tab.unroute("**/photograph*"))
        do(lambda: tab.tap("#rows .again"))
        until(do, tab, ROWS, ["kept"])
