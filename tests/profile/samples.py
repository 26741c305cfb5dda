"""A small invented profile that is right, to be made wrong in one place after another."""

GOOD = """\
format = 1
id = "tern-250"
version = "1"
title = "Tern 250 single (invented)"
maker = "Tern (invented)"
invented = true
model_years = [1950, 1952]
season_starts = 9
[[author]]
name = "Ada Fenn (invented)"
[[source]]
id = "list"
kind = "factory list"
title = "Parts list"
[[source]]
id = "told"
kind = "memory"
title = "Told at a meeting"
[[place]]
id = "frame"
name = "Frame number"
where = "Left of the head"
assembly = "frame"
[[place.rule]]
id = "plain"
title = "Letter and serial"
sources = ["list"]
separators = " -"
never_used = "IO"
serial = "count"
orders = [["letter", "count"], ["month", "letter", "count"]]
segment = [
  { id = "month", kind = "table", gives = "month of build", codes = [
    { code = "A", month = 1 },
    { code = "B", month = 2 },
  ] },
  { id = "letter", kind = "literal", text = "T" },
  { id = "count", kind = "digits", width = 4 },
]
[[place.rule.range]]
prefix = "T"
from = 101
to = 900
model_year = 1950
[[place.rule.range]]
prefix = "T"
from = 901
model_year = 1951
[[place]]
id = "engine"
name = "Engine number"
where = "Below the barrel"
assembly = "engine"
[[relation]]
places = ["frame", "engine"]
kind = "same number"
sources = ["list"]
[[station]]
id = "left"
name = "Left side"
[[station.item]]
id = "carburettor"
name = "Carburettor"
question = "Which type?"
how = "Read the body."
assembly = "engine"
place = "engine"
[[station.item.variant]]
id = "early"
name = "Early body"
tell = "round bowl"
years = { from = 1950, to = 1951 }
sources = ["list"]
[[station.item.variant]]
id = "late"
name = "Late body"
tell = "square bowl"
years = { from = 1952 }
sources = ["list"]
[[station.item.measure]]
id = "bore"
name = "Choke"
unit = "mm"
nominal = [{ variant = "early", value = 22.0, plus = 0.1, sources = ["list"] }]
[[station.item.cost]]
id = "rebush"
kind = "repair"
name = "Bush the slide"
parts = [10, 20, 30]
job = "strip"
[[station.item.cost]]
id = "replace"
kind = "used"
name = "Another body"
after = ["rebush"]
excludes = ["rebush"]
[[station]]
id = "right"
name = "Right side"
[[station.item]]
id = "lamp"
name = "Lamp"
question = "Which lamp?"
how = "Look."
assembly = "electrics"
optional = true
[[job]]
id = "strip"
name = "Carburettor off"
[[job]]
id = "drain"
name = "Fuel out"
needs = ["strip"]
[points]
name = "Points"
sources = ["list"]
[[points.heading]]
id = "engine"
name = "Engine"
points = 4
[[shot]]
id = "whole"
name = "The whole machine"
item = "lamp"
[[trap]]
id = "copy"
title = "A copy"
text = "Copies exist."
items = ["lamp"]
places = ["frame"]
sources = ["list"]
[[year_note]]
year = 1951
text = "New lamp."
sources = ["list"]
"""


def line_of(text: str, marker: str) -> int:
    """The line on which the marker first stands, counted as a person counts."""
    return text[: text.index(marker)].count("\n") + 1


def changed(old: str, new: str, text: str = GOOD) -> str:
    """The text with the first of the old replaced."""
    assert old in text
    return text.replace(old, new, 1)
