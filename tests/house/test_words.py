"""Words that would promise what an inspection cannot know, and paths of one machine."""

import ast
import re

import pytest

from tests.house.project import ROOT, parsed, python_files, tracked

NEVER = ("authentic", "genuine", "original numbers", "certified", "not stolen", "safe to ride",
         "market value")  # fmt: skip
LIST = "NEVER_WORDS"  # the one name that may hold them, to refuse them elsewhere
READ = (".md", ".toml", ".po", ".json", ".svg", ".txt", ".html")
TREES = "|".join(("work", "opt", "root", "home"))
MACHINE = re.compile(rf"(?<![\w.$~*])/(?:{TREES})/")
PICTURES = (".png", ".jpg", ".jpeg", ".heic", ".ttf", ".pdf", ".mo", ".ico", ".icns")


def named_lists(tree: ast.AST) -> list[ast.AST]:
    """The assignments to the one name that may hold the words."""
    found = []
    for node in ast.walk(tree):
        targets = getattr(node, "targets", [getattr(node, "target", None)])
        if isinstance(node, ast.Assign | ast.AnnAssign) and any(
            isinstance(target, ast.Name) and target.id == LIST for target in targets
        ):
            found.append(node)
    return found


def literals(tree: ast.AST) -> list[ast.Constant]:
    """Every string in the code, but for those in the one named list."""
    spared = {id(inner) for node in named_lists(tree) for inner in ast.walk(node)}
    return [
        node
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in spared
    ]


def never_in(text: str) -> list[str]:
    plain = " ".join(text.casefold().split())
    return [word for word in NEVER if word in plain]


def test_no_string_in_the_code_holds_a_never_word():
    found = [
        f"{name}:{node.lineno} says {word}"
        for name in python_files("inspector", "resources", "sample_profiles")
        for node in literals(parsed(name))
        for word in never_in(node.value)
    ]
    assert found == []


def test_the_words_are_listed_in_one_place_at_most():
    holders = [name for name in python_files("inspector") if named_lists(parsed(name))]
    assert len(holders) <= 1


def test_no_text_that_ships_holds_a_never_word():
    tops = ("resources", "sample_profiles", "README.md")
    names = [n for n in tracked() if n.split("/")[0] in tops and n.endswith(READ)]
    licences = [n for n in names if n.startswith("resources/fonts/")]
    texts = {n: (ROOT / n).read_text("utf-8") for n in names if n not in licences}
    assert texts
    assert {n: never_in(text) for n, text in texts.items() if never_in(text)} == {}


@pytest.mark.parametrize(
    ("code", "found"),
    [
        ('x = f"It is Certified by {who}"', ["certified"]),
        ('x = "a market " "value"', ["market value"]),
        ("NEVER_WORDS = ('genuine',)", []),
        ("NEVER_WORDS: tuple[str, ...] = ('genuine',)", []),
        ('x = "the figures agree as read"', []),
    ],
)
def test_a_never_word_is_seen_however_it_is_written(code, found):
    assert [w for node in literals(ast.parse(code)) for w in never_in(node.value)] == found


def test_no_tracked_file_names_a_path_of_one_machine():
    found = [
        f"{name}:{number}"
        for name in tracked()
        if not name.endswith(PICTURES)
        for number, line in enumerate((ROOT / name).read_text("utf-8").splitlines(), 1)
        if MACHINE.search(line)
    ]
    assert found == []


@pytest.mark.parametrize("start", ["", "see ", '"', "--to=", "file://"])
def test_a_machine_path_is_seen_wherever_it_stands(start):
    assert MACHINE.search(f"{start}/{'work'}/main")
    assert not MACHINE.search(f"{start}https://example.org/{'work'}/main")
