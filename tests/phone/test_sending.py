"""What comes in: whole, within bounds, at the item that was named; and what is left when it does not."""

import json
import queue
import select
import socket
import threading
import tracemalloc
from contextlib import ExitStack
from dataclasses import replace
from http.client import HTTPException

import pytest

from inspector.phone.body import plain_name
from inspector.phone.limits import Limits
from inspector.phone.messages import Fate, Sent
from inspector.phone.words import PAGE
from tests.phone.hosts import LOOPBACK, VIEW, Clock, Running, opened

TWO_GB = 2_000_000_000
MB = 1_000_000


def head(page, *lines, path="/photograph?record=R1&item=tank"):
    """The first lines of a photograph that is sent, up to its body."""
    given = (f"Host: {page.server.at}", f"Origin: {page.origin}", f"Cookie: {page.cookie}")
    return "".join(f"{line}\r\n" for line in (f"POST {path} HTTP/1.1", *given, *lines, "")).encode()


def test_a_photograph_reaches_the_host_with_name_record_item_and_device():
    with opened() as page:
        page.join()
        assert page.send(b"bytes of it", name="IMG%201.jpg") == (200, {"outcome": "kept", "sentence": ""})
        (sent,) = page.desk.sent
        assert sent == Sent("IMG 1.jpg", b"bytes of it", "R1", "tank", 1)
        assert page.desk.guests_told[0].photographs == 1


def test_a_photograph_goes_to_the_item_that_was_shown_even_when_another_is_open_now():
    with opened() as page:
        page.join()
        page.server.show(replace(VIEW, item="seat", name="Seat"))
        assert page.send(b"one", item="tank")[0] == 200
        assert page.desk.sent[0].item == "tank"


def test_a_photograph_for_another_machine_is_refused():
    with opened() as page:
        page.join()
        assert page.send(b"one", record="R2")[0] == 409
        assert page.ask("POST", "/photograph", b"one")[0] == 400
        assert page.ask("POST", "/photograph?record=R1&item=", b"one")[0] == 400
        assert page.desk.sent == []


def test_two_gigabytes_announced_are_refused_before_they_come():
    with opened() as page:
        page.join()
        answer = page.raw(head(page, f"Content-Length: {TWO_GB}", "Connection: close") + b"x" * MB)
        assert answer.startswith(b"HTTP/1.1 413")
        assert b"60 MB" in answer
        assert page.desk.sent == []


def test_two_gigabytes_in_pieces_are_cut_off_early_and_little_of_them_is_ever_held():
    most = 4 * MB
    with opened(Limits(file_bytes=most)) as page:
        page.join()
        tracemalloc.start()
        try:
            passed = pour(page, TWO_GB)
            _, peak = tracemalloc.get_traced_memory()
        finally:
            tracemalloc.stop()
        assert passed < TWO_GB
        assert peak < 4 * most
        assert page.desk.sent == []
        assert page.send(b"small")[0] == 200


def pour(page, wanted):
    """How many bytes of a body in pieces could be sent before the other side would have no more."""
    piece = b"%x\r\n" % MB + bytes(MB) + b"\r\n"
    passed = 0
    with socket.create_connection((LOOPBACK, page.port), timeout=10) as line:
        line.sendall(head(page, "Transfer-Encoding: chunked"))
        try:
            while passed < wanted:
                line.sendall(piece)
                passed += MB
        except ConnectionError:
            pass
    return passed


def test_a_body_that_breaks_off_is_not_handed_on():
    with opened(Limits(silence=0.2)) as page:
        page.join()
        assert page.raw(head(page, "Content-Length: 100", "Connection: close") + b"half").startswith(b"HTTP/1.1 400")
        with socket.create_connection((LOOPBACK, page.port), timeout=10) as line:
            line.sendall(head(page, "Content-Length: 100") + b"half")
        assert page.send(b"whole")[0] == 200
        assert [sent.data for sent in page.desk.sent] == [b"whole"]


def test_a_body_that_trickles_without_end_is_given_up():
    with opened(Limits(at_once=1, whole=0.3)) as page:
        page.join()
        with socket.create_connection((LOOPBACK, page.port), timeout=10) as line, line.makefile("rb") as answer:
            line.sendall(head(page, "Content-Length: 1000"))
            line.settimeout(0.05)
            for _ in range(200):
                line.sendall(b"x")
                if readable(line):
                    break
            line.settimeout(10)
            assert answer.readline().startswith(b"HTTP/1.1 400")
        assert page.send(b"whole")[0] == 200


def readable(line):
    """Whether an answer has come, after a moment at most."""
    return bool(select.select([line], [], [], 0.05)[0])


@pytest.mark.parametrize(
    ("lines", "body"),
    [
        (["Content-Length: 4", "Content-Encoding: gzip"], b"\x1f\x8b\x08\x00"),
        (["Content-Length: 0"], b""),
        (["Content-Length: -1"], b"abcd"),
        (["Content-Length: 4", "Content-Length: 5"], b"abcde"),
        (["Content-Length: 4", "Transfer-Encoding: chunked"], b"4\r\nabcd\r\n0\r\n\r\n"),
        (["Transfer-Encoding: chunked"], b"zz\r\nabcd\r\n0\r\n\r\n"),
        (["Content-Length: 4", "X-Long: " + "x" * 9000], b"abcd"),
    ],
)
def test_what_is_packed_empty_or_ambiguous_is_refused(lines, body):
    with opened(Limits(silence=0.5)) as page:
        page.join()
        answer = page.raw(head(page, *lines, "Connection: close") + body)
        assert answer.startswith((b"HTTP/1.1 400", b"HTTP/1.0 400", b"HTTP/1.1 415"))
        assert page.desk.sent == []


def test_so_many_photographs_and_so_many_bytes_and_no_more():
    with opened(Limits(files=2)) as page:
        page.join()
        assert [page.send(b"%d" % n)[0] for n in range(3)] == [200, 200, 507]
    with opened(Limits(all_bytes=10)) as page:
        page.join()
        assert [page.send(b"123456")[0] for n in range(2)] == [200, 507]
        assert len(page.desk.sent) == 1


def test_only_so_many_are_read_at_once_and_too_many_waiting_are_told_to_come_again():
    with opened(Limits(at_once=1, waiting=1)) as page:
        page.join()
        page.desk.held = []
        fates = queue.Queue()
        threads = [threading.Thread(target=lambda: fates.put(page.send(b"data")[0])) for _ in range(4)]
        for thread in threads:
            thread.start()
        assert [fates.get(timeout=20) for _ in range(2)] == [503, 503]
        _answer_all(page, 2)
        assert [fates.get(timeout=20) for _ in range(2)] == [200, 200]
        for thread in threads:
            thread.join(10)
        assert len(page.desk.sent) == 2


def _answer_all(page, count):
    for _ in range(count):
        assert page.desk.wait(lambda: bool(page.desk.held))
        page.desk.held.pop()(Fate("kept", ""))


def test_an_answer_that_never_comes_holds_nobody_up_for_ever():
    with opened(Limits(at_once=1, answer=0.1)) as page:
        page.join()
        page.desk.held = []
        status, answer = page.send(b"one")
        assert status == 504
        assert "Look there" in answer["sentence"]
        page.desk.held = None
        assert page.send(b"two")[0] == 200


def test_two_hundred_requests_at_once_are_bounded_and_the_page_lives_on():
    limits = Limits(connections=20, burst=60, rate=1.0)
    with opened(limits) as page:
        page.join()
        outcomes, begin = [], threading.Barrier(200)

        def one():
            begin.wait()
            try:
                outcomes.append(page.send(b"data")[0])
            except (OSError, HTTPException):  # closed before or while it was asked
                outcomes.append(0)

        threads = [threading.Thread(target=one) for _ in range(200)]
        for thread in threads:
            thread.start()
        for thread in threads:
            thread.join(20)
        assert len(outcomes) == 200
        assert outcomes.count(200) == len(page.desk.sent)
        assert outcomes.count(200) <= limits.burst
        assert set(outcomes) <= {0, 200, 429, 503}
        assert outcomes.count(200) < 200
        page.clock.now += 60
        assert page.ask("GET", "/")[0] == 200


def test_a_connection_that_asks_nothing_is_closed():
    limits = Limits(beat=0.02, asleep=1e9, alone=1e9, silence=5.0)
    with opened(limits, Running()) as page, socket.create_connection((LOOPBACK, page.port), timeout=10) as line:
        assert line.recv(1) == b""


def test_connections_that_ask_nothing_give_way_to_one_that_asks():
    limits = Limits(connections=6)
    with opened(limits) as page, ExitStack() as lines:
        page.join()
        for _ in range(30):
            line = lines.enter_context(socket.create_connection((LOOPBACK, page.port), timeout=10))
            line.sendall(b"GET / HTTP/1.1\r\nX-Slow: ")
            assert page.ask("GET", "/")[0] == 200


def test_what_cannot_be_read_is_refused_and_written_out_nowhere(capfd, caplog):
    with opened() as page:
        said = page.raw(b"GET / HTTP/1.1\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n")
        assert b" 400 " in said.splitlines()[0]
    assert caplog.records == []
    assert "".join(capfd.readouterr()) == ""


def test_keys_are_pressed_at_the_item_that_was_shown():
    with opened() as page:
        page.join()
        for verb in ("next", "pass"):
            body = json.dumps({"verb": verb, "record": "R1", "item": "tank"}).encode()
            assert page.ask("POST", "/press", body)[0] == 200
        assert [(press.verb, press.item) for press in page.desk.pressed] == [("next", "tank"), ("pass", "tank")]
        refused = page.ask("POST", "/press", json.dumps({"verb": "fail", "record": "R1", "item": "tank"}).encode())
        assert (refused[0], json.loads(refused[1])) == (409, {"sentence": "Not now."})


NONSENSE = (
    b"", b"{", b"[]", b"1", b'{"verb": "sell", "record": "R1", "item": "tank"}', b'{"verb": "pass", "record": "R1"}',
    b'{"verb": ["pass"], "record": "R1", "item": "tank"}', b'{"verb": "pass", "record": "R1", "item": 7}', b"x" * 3000,
    b"[" * 1900, b'{"verb": "pass", "record": "R2", "item": "tank"}', b"\xff\xfe",
)  # fmt: skip


def test_a_press_that_is_not_understood_does_nothing():
    with opened() as page:
        page.join()
        for body in NONSENSE:
            assert page.ask("POST", "/press", body)[0] in (400, 409, 413), body
        assert page.desk.pressed == []


@pytest.mark.parametrize(
    ("given", "name"),
    [
        ("IMG_1.jpg", "IMG_1.jpg"),
        ("..%2F..%2Fetc%2Fpasswd", "passwd"),
        ("C%3A%5Cusers%5Cme.heic", "me.heic"),
        ("%00%0A%1Ba%E2%80%AE.jpg", "a .jpg"),
        ("", ""),
        ("..", ""),
        ("B%C3%BCcher%20%E8%BB%8A.jpg", "Bücher 車.jpg"),
        ("%FF.jpg", "\ufffd.jpg"),
        ("x" * 300 + ".jpeg", "x" * 114 + ".jpeg"),
    ],
)
def test_a_name_is_only_a_name(given, name):
    assert plain_name(given) == name


def news(page):
    """The stream of news, read line by line."""
    line = socket.create_connection((LOOPBACK, page.port), timeout=10)
    line.sendall(f"GET /news HTTP/1.1\r\nHost: {page.server.at}\r\nCookie: {page.cookie}\r\n\r\n".encode())
    return line, line.makefile("rb")


def until(lines, word):
    """All that was read up to the first line with this word."""
    seen = []
    while not seen or word not in seen[-1]:
        seen.append(lines.readline())
        assert seen[-1], f"closed before {word!r}"
    return b"".join(seen)


def test_the_page_hears_what_is_open_and_every_change_and_its_end():
    with opened() as page:
        page.join()
        line, lines = news(page)
        with line, lines:
            assert b"Tank" in until(lines, b"data: ")
            assert page.desk.wait(lambda: page.desk.guests_told[0].live)
            page.server.show(replace(VIEW, item="seat", name="Seat"))
            assert b'"name": "Seat"' in until(lines, b"seat")
            page.server.close()
            assert b"event: ended" in until(lines, b"ended")


def test_a_page_that_is_cut_off_hears_it():
    with opened() as page:
        page.join()
        line, lines = news(page)
        with line, lines:
            until(lines, b"data: ")
            page.server.cut_off(1)
            until(lines, b"event: cut")


def test_after_closing_nothing_answers_and_what_was_on_its_way_is_told():
    with opened() as page:
        page.join()
        page.desk.held = []
        fates = []
        sending = threading.Thread(target=lambda: fates.append(page.send(b"data")))
        sending.start()
        assert page.desk.wait(lambda: bool(page.desk.sent))
        page.server.close()
        sending.join(10)
        assert fates[0][1]["outcome"] == "refused"
        assert "closed the page" in fates[0][1]["sentence"]
        with pytest.raises(ConnectionError):
            page.ask("GET", "/")
        page.desk.held[0](None)  # an answer that comes too late disturbs nobody
        assert page.server.renew() == ""
        page.server.close()


def test_it_closes_by_itself_when_the_computer_slept_or_nobody_came():
    for passed, words in ((Limits().alone + 1, "no phone"), (50.0, "slept")):
        clock = Clock()
        asleep = 1e9 if "phone" in words else 30.0
        with opened(Limits(beat=0.01, asleep=asleep), clock=clock) as page:
            clock.now += passed
            assert page.desk.wait(lambda page=page: page.desk.why is not None)
            assert words in str(page.desk.why)


def test_every_sentence_of_the_page_is_there_once():
    with opened() as page:
        page.join()
        shown = page.ask("GET", "/")[1].decode()
        assert "{{" not in shown
        told = json.loads(shown.partition('id="told">')[2].partition("</script>")[0])
        assert set(told["words"]) == set(PAGE)
        assert told["most"] == Limits().file_bytes
        assert "This is phone 1." in shown
