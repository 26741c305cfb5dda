"""How large a function, a file and the top level may grow."""

import ast

import pytest

from tests.house.project import ROOT, parsed, python_files, tracked

TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "inspector", "resources", "tests",
       "sample_profiles"}  # fmt: skip
FUNCTION = 60
FILE = 400


def functions(tree: ast.AST) -> list[ast.FunctionDef | ast.AsyncFunctionDef]:
    return [n for n in ast.walk(tree) if isinstance(n, ast.FunctionDef | ast.AsyncFunctionDef)]


def length(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    return node.end_lineno - node.lineno + 1


def test_no_function_is_past_sixty_lines():
    found = [
        f"{name}: {node.name} has {length(node)} lines"
        for name in python_files("inspector", "resources")
        for node in functions(parsed(name))
        if length(node) > FUNCTION
    ]
    assert found == []


@pytest.mark.parametrize(("lines", "past"), [(60, False), (61, True)])
def test_a_function_is_measured_from_its_first_line_to_its_last(lines, past):
    source = "def long():\n" + "    x = 1\n" * (lines - 1)
    (node,) = functions(ast.parse(source))
    assert (length(node) > FUNCTION) is past


def test_no_file_is_past_four_hundred_lines():
    sizes = {n: len((ROOT / n).read_text("utf-8").splitlines()) for n in python_files("inspector")}
    assert sizes
    assert {name: size for name, size in sizes.items() if size > FILE} == {}


def test_the_top_level_holds_only_what_was_agreed():
    found = {name.split("/")[0] for name in tracked()}
    assert {name for name in found if not name.startswith(".")} <= TOP
