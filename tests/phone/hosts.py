"""A host that answers at once, a page opened on the loopback, and a client that can ask badly."""

import http.client
import json
import socket
import threading
from contextlib import contextmanager

from inspector.phone.limits import Limits
from inspector.phone.messages import Fate, View
from inspector.phone.server import Server
from inspector.texts import tr

LOOPBACK = "127.0.0.1"
VIEW = View(record="R1", machine="Brackwater Heron", item="tank", name="Tank", where="Left side, item 3 of 9",
            question="Is it the one?", photograph=("The seam below.",), have="", mark="")  # fmt: skip


class Clock:
    """A clock that stands still until it is moved on."""

    def __init__(self):
        self.now = 1000.0

    def __call__(self):
        return self.now


class Running(Clock):
    """A clock on which half a second has passed at each look."""

    def __call__(self):
        self.now += 0.5
        return self.now


class Desk:
    """Keeps what it is handed in lists; answers "kept" until told to hold its answers back."""

    def __init__(self):
        self.sent, self.pressed, self.guests_told, self.why = [], [], (), None
        self.held = None
        self.news = threading.Condition()

    def photograph(self, sent, answer):
        with self.news:
            self.sent.append(sent)
            if self.held is not None:
                self.held.append(answer)
            self.news.notify_all()
        if self.held is None:
            answer(Fate("kept", ""))

    def press(self, press, answer):
        self.pressed.append(press)
        answer("" if press.verb != "fail" else "Not now.")

    def guests(self, guests):
        with self.news:
            self.guests_told = guests
            self.news.notify_all()

    def ended(self, why):
        with self.news:
            self.why = why
            self.news.notify_all()

    def wait(self, until):
        """True once that is so; False after ten seconds."""
        with self.news:
            return self.news.wait_for(until, 10)


class Opened:
    """A page that is open, and what its tests do with it."""

    def __init__(self, limits=None, clock=None):
        self.desk, self.clock = Desk(), clock or Clock()
        self.server = Server(self.desk, tr, limits or Limits(), self.clock)
        self.code = self.server.open(LOOPBACK, VIEW)
        self.port = int(self.server.at.rpartition(":")[2])
        self.origin = f"http://{self.server.at}"
        self.cookie = ""

    def ask(self, method, path, body=None, **headers):
        """Status and body of one request; the cookie, host and origin of the page unless others are given."""
        given = {"Host": self.server.at, "Origin": self.origin, "Cookie": self.cookie}
        given.update({name.replace("_", "-"): value for name, value in headers.items()})
        connection = http.client.HTTPConnection(LOOPBACK, self.port, timeout=10)
        try:
            connection.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
            for name, value in given.items():
                if value is not None:
                    connection.putheader(name, value)
            if body is not None and "Content-Length" not in given and "Transfer-Encoding" not in given:
                connection.putheader("Content-Length", str(len(body)))
            connection.endheaders(body)
            answer = connection.getresponse()
            return answer.status, answer.read(), dict(answer.getheaders())
        finally:
            connection.close()

    def join(self):
        """Joined as a browser joins; its cookie goes with what is asked afterwards."""
        status, _, headers = self.ask("GET", f"/{self.code}", Origin=None, Cookie=None)
        assert status == 200
        self.cookie = headers["Set-Cookie"].split(";")[0]
        return headers

    def send(self, data, name="a.jpg", item="tank", record="R1", **headers):
        """Status and answer to a photograph."""
        status, body, _ = self.ask("POST", f"/photograph?record={record}&item={item}", data, X_Name=name, **headers)
        return status, json.loads(body)

    def raw(self, data):
        """What comes back for these bytes, until the other side closes."""
        with socket.create_connection((LOOPBACK, self.port), timeout=10) as line:
            line.sendall(data)
            return line.makefile("rb").read()


@contextmanager
def opened(limits=None, clock=None):
    """A page that is open until the test is over, whatever happens in it."""
    made = Opened(limits, clock)
    try:
        yield made
    finally:
        made.server.close()
        assert not made.server.running
