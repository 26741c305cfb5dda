"""The lines of tables, keys and list entries, however TOML lets them be written."""

import tomllib

import pytest

from inspector.profile.lines import Lines
from tests.profile.samples import GOOD, line_of

ODD = '''\
# [not.a.table]
a = """
[[b]]
c = 1 ""\\"
"""
"quoted key" = 'it # is'   # b = 2
[[b]]
x.y = 1
x."z w" = [ # [1]
  "]", { deep = [1,
    2] , last = '}' },
]
  [ b . sub ]
s = \'\'\'
"""
\'\'\'
[[b]]
[[b.inner]]
q = 2024-05-01
[[b.inner]]
q = {}
'''


@pytest.mark.parametrize(
    ("where", "line"),
    [
        (("a",), 2),
        (("quoted key",), 6),
        (("b",), 7),
        (("b", 0), 7),
        (("b", 0, "x"), 8),
        (("b", 0, "x", "y"), 8),
        (("b", 0, "x", "z w"), 9),
        (("b", 0, "x", "z w", 0), 10),
        (("b", 0, "x", "z w", 1, "deep", 1), 11),
        (("b", 0, "x", "z w", 1, "last"), 11),
        (("b", 0, "sub"), 13),
        (("b", 0, "sub", "s"), 14),
        (("b", 1), 17),
        (("b", 1, "inner", 0, "q"), 19),
        (("b", 1, "inner", 1), 20),
        (("b", 1, "inner", 1, "q"), 21),
        (("b", 1, "inner", 1, "gone", 3), 20),
        (("b", 7), 7),
        (("unheard",), None),
        ((), None),
    ],
)
def test_a_path_has_the_line_where_it_stands(where, line):
    tomllib.loads(ODD)
    assert Lines(ODD).of(where) == line


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_line_ends_of_either_kind_count_once(end):
    lines = Lines(GOOD.replace("\n", end))
    assert lines.of(("station", 1, "item", 0)) == line_of(GOOD, 'id = "lamp"') - 1
    assert lines.of(("place", 0, "rule", 0, "segment", 0, "codes", 1)) == line_of(GOOD, 'code = "B"')


@pytest.mark.parametrize("text", ["[", "a", "a = [", "a = {b", 'a = "', "= 1", "[[a]]\nb = ]", "a = " + "[" * 9000])
def test_text_that_is_no_toml_is_taken_as_far_as_it_goes(text):
    assert Lines(text).of(("a",)) in (None, 1)
