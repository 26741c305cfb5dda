"""Who comes in: with the code and in time, at the right address, from the page itself; nobody else."""

import json
import math
import random
import socket
from contextlib import suppress

import pytest

from inspector.phone.codes import LETTERS, Code, as_read, new_code, spaced
from inspector.phone.limits import Limits
from inspector.phone.refusals import CannotOpen
from inspector.phone.server import Server
from inspector.texts import tr
from tests.phone.hosts import LOOPBACK, VIEW, Clock, Desk, opened

PATHS = ("/", "/page.js", "/page.css", "/regular.ttf", "/news")
TRICKS = (
    "/../../etc/passwd", "/..%2f..%2fetc%2fpasswd", "/%2e%2e/%2e%2e/etc/passwd", "//etc/passwd", "/page.js/../../../x",
    "/page.css%00.html", "/..\\..\\windows\\win.ini", "/photograph/../library.sqlite", "/resources/", "/%",
    "/.git/config", "/page.js?x=../../etc/passwd%00", "/file:///etc/passwd",
)  # fmt: skip


def test_a_code_has_at_least_128_random_bits_and_no_letter_to_be_mistaken():
    code = new_code()
    assert len(code) * math.log2(len(LETTERS)) >= 128
    assert set(code) <= set(LETTERS)
    assert not set("ilou") & set(LETTERS)
    assert len({new_code() for _ in range(200)}) == 200


def test_a_code_may_be_typed_with_capitals_hyphens_and_look_alikes():
    code = Code("01a" * 8 + "zzzz", 0.0)
    assert code.fits(spaced(code.text).upper())
    assert code.fits("OIa" * 4 + "0la" * 4 + "zzZZ")
    assert as_read(spaced(code.text)) == code.text
    assert not code.fits(code.text[:-1])
    assert not code.fits("ü" * 28)


@pytest.mark.parametrize("address", ["0.0.0.0", "::", "::1", "8.8.8.8", "224.0.0.1", "255.255.255.255", "phone", ""])
def test_no_address_but_one_of_a_local_network_is_opened(address):
    with pytest.raises(CannotOpen, match="local network"):
        Server(Desk(), tr).open(address, VIEW)


def test_an_address_of_another_computer_is_one_sentence():
    with pytest.raises(CannotOpen, match=r"192\.168\.255\.254.*Check the network"):
        Server(Desk(), tr).open("192.168.255.254", VIEW)


def test_without_joining_nothing_is_served():
    with opened() as page:
        for path in PATHS:
            status, body, _ = page.ask("GET", path)
            assert status == 403
            assert "scan" in json.loads(body)["sentence"].lower()
        assert page.send(b"data")[0] == 403
        assert page.ask("POST", "/press", b"{}")[0] == 403
        assert page.desk.sent == []


def test_a_wrong_code_is_refused_in_words_and_gives_no_cookie():
    with opened() as page:
        status, body, headers = page.ask("GET", f"/{new_code()}", Origin=None, Accept="text/html")
        assert status == 403
        assert "Set-Cookie" not in headers
        assert "does not hold" in body.decode()
        assert page.desk.guests_told == ()


def test_a_code_that_ran_out_lets_nobody_join_but_who_joined_stays():
    clock = Clock()
    with opened(clock=clock) as page:
        page.join()
        clock.now += Limits().join + 1
        status, body, _ = page.ask("GET", f"/{page.code}", Origin=None, Cookie=None)
        assert status == 403
        assert "run out" in json.loads(body)["sentence"]
        assert page.ask("GET", "/")[0] == 200
        renewed = page.server.renew()
        assert page.ask("GET", f"/{page.code}", Origin=None, Cookie=None)[0] == 403
        assert page.ask("GET", f"/{renewed}", Origin=None, Cookie=None)[0] == 200


def test_a_device_may_not_stay_for_ever():
    clock = Clock()
    with opened(Limits(stay=100.0, beat=0.01, asleep=1e9), clock=clock) as page:
        page.join()
        clock.now += 101
        assert page.ask("GET", "/")[0] == 403
        assert page.send(b"data")[0] == 403
        assert page.desk.wait(lambda: page.desk.guests_told == ())


def test_many_wrong_codes_close_the_door_for_that_address():
    with opened(Limits(wrong=3)) as page:
        seen = [page.ask("GET", f"/{new_code()}", Origin=None)[0] for _ in range(5)]
        assert seen == [403, 403, 403, 429, 429]
        assert page.ask("GET", f"/{page.code}", Origin=None)[0] == 429
        page.clock.now += 60
        assert page.ask("GET", f"/{page.code}", Origin=None)[0] == 200


def test_so_many_devices_and_no_more():
    with opened(Limits(devices=2)) as page:
        codes = [page.ask("GET", f"/{page.code}", Origin=None)[0] for _ in range(3)]
        assert codes == [200, 200, 403]
        assert [guest.number for guest in page.desk.guests_told] == [1, 2]


def test_the_same_browser_joins_once():
    with opened() as page:
        page.join()
        assert page.ask("GET", f"/{page.code}", Origin=None)[0] == 200
        assert len(page.desk.guests_told) == 1


def test_a_device_that_is_cut_off_can_do_nothing_nor_come_back():
    with opened() as page:
        page.join()
        renewed = page.server.cut_off(1)
        assert page.desk.guests_told == ()
        assert page.send(b"data")[0] == 403
        assert page.ask("GET", f"/{page.code}", Origin=None, Cookie=None)[0] == 403
        assert renewed != page.code
        assert page.desk.sent == []


@pytest.mark.parametrize("host", ["inspector.example", "127.0.0.1", "localhost:80", "127.0.0.1:1", "evil.example:80"])
def test_another_name_for_this_computer_is_refused(host):
    with opened() as page:
        page.join()
        assert page.ask("GET", "/", Host=host)[0] == 421
        assert page.send(b"data", Host=host)[0] == 421
        assert page.desk.sent == []


@pytest.mark.parametrize("origin", ["http://evil.example", "null", None, "https://127.0.0.1", ""])
def test_what_another_page_asks_is_not_done(origin):
    with opened() as page:
        page.join()
        assert page.send(b"data", Origin=origin)[0] == 403
        press = json.dumps({"verb": "pass", "record": "R1", "item": "tank"}).encode()
        assert page.ask("POST", "/press", press, Origin=origin)[0] == 403
        assert page.ask("POST", "/press", press, Sec_Fetch_Site="cross-site")[0] == 403
        assert page.desk.sent == []
        assert page.desk.pressed == []


def test_no_path_leads_to_a_file():
    with opened() as page:
        page.join()
        for path in TRICKS:
            named = f"GET {path} HTTP/1.1\r\nHost: {page.server.at}\r\n"
            answer = page.raw(f"{named}Cookie: {page.cookie}\r\nConnection: close\r\n\r\n".encode())
            top, _, body = answer.partition(b"\r\n\r\n")
            status = int(top.split()[1])
            assert status in (400, 403, 404) or (status == 200 and path.startswith("/page.js?")), path
            assert b"root:" not in body
            assert b"sqlite" not in body.lower()


def test_other_methods_are_refused():
    with opened() as page:
        page.join()
        for method in ("PUT", "DELETE", "HEAD", "OPTIONS", "TRACE", "PROPFIND"):
            assert page.ask(method, "/")[0] in (403, 405)
            assert page.ask(method, "/photograph?record=R1&item=tank", b"data")[0] in (403, 405)
        assert page.desk.sent == []


def test_every_answer_forbids_what_the_page_does_not_need():
    with opened() as page:
        joined = page.join()
        cookie = joined["Set-Cookie"].lower()
        assert "httponly" in cookie
        assert "samesite=strict" in cookie
        assert f"max-age={Limits().stay:.0f}" in cookie
        for answer in (joined, page.ask("GET", "/page.js")[2], page.ask("GET", "/none")[2]):
            assert "default-src 'none'" in answer["Content-Security-Policy"]
            assert "unsafe" not in answer["Content-Security-Policy"]
            assert answer["X-Content-Type-Options"] == "nosniff"
            assert answer["Referrer-Policy"] == "same-origin"
            assert answer["Cache-Control"] == "no-store"
            assert "Python" not in answer["Server"]
            assert "Access-Control-Allow-Origin" not in answer


def test_the_page_loads_nothing_from_elsewhere_and_holds_no_code():
    with opened() as page:
        page.join()
        whole = b"".join(page.ask("GET", path)[1] for path in PATHS[:3]).decode()
        assert "://" not in whole
        assert page.code not in whole
        assert page.cookie.partition("=")[2] not in whole


def test_whatever_bytes_come_the_page_lives_on():
    chance = random.Random(7)
    with opened(Limits(silence=0.3, beat=0.05)) as page:
        page.join()
        for size in (1, 3, 40, 400, 4_000, 40_000) * 3:
            with socket.create_connection((LOOPBACK, page.port), timeout=10) as line, suppress(ConnectionError):
                line.sendall(b"GET / HTTP/1.1\r\n"[: chance.randrange(17)] + chance.randbytes(size))
        assert page.ask("GET", "/")[0] == 200
        assert page.desk.sent == []


def test_it_listens_on_that_one_address():
    with opened() as page:
        assert page.server.at == f"{LOOPBACK}:{page.port}"
        with socket.socket() as line:
            line.settimeout(2)
            assert line.connect_ex(("127.0.0.2", page.port)) != 0
