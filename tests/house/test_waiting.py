"""Tests wait for what they need, never for time to pass."""

import ast

import pytest

from tests.house.project import parsed, python_files

TIME = {"sleep", "qSleep", "msleep", "usleep", "qWait"}
SIGNALS = {"waitSignal", "waitSignals", "assertNotEmitted", "waitCallback", "waitExposed"}


def idle(tree: ast.AST) -> list[str]:
    """Every call that lets time pass, or looks like waiting for a signal without doing so."""
    entered = {
        id(item.context_expr)
        for node in ast.walk(tree)
        if isinstance(node, ast.With | ast.AsyncWith)
        for item in node.items
    }
    found = []
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        name = getattr(node.func, "attr", getattr(node.func, "id", ""))
        owner = getattr(getattr(node.func, "value", None), "id", "")
        if (
            name in TIME
            or (owner == "qtbot" and name == "wait")
            or (name in SIGNALS and id(node) not in entered)
        ):
            found.append(f"line {node.lineno}: {name}")
    return found


def test_no_test_lets_time_pass():
    found = {name: idle(parsed(name)) for name in python_files("tests")}
    assert found
    assert {name: calls for name, calls in found.items() if calls} == {}


@pytest.mark.parametrize(
    ("code", "calls"),
    [
        ("time.sleep(1)", 1),
        ("sleep(1)", 1),
        ("qtbot.wait(50)", 1),
        ("QTest.qWait(50)", 1),
        ("qtbot.waitSignal(job.done)", 1),
        ("with qtbot.waitSignal(job.done): job.start()", 0),
        ("with (qtbot.waitSignal(a), qtbot.waitSignal(b)): job.start()", 0),
        ("qtbot.waitUntil(lambda: job.over)", 0),
        ("process.wait(timeout=5)", 0),
    ],
)
def test_idle_waiting_is_seen(code, calls):
    assert len(idle(ast.parse(code))) == calls
