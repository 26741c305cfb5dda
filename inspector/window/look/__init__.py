"""The look of the window: a kit of widgets that know no record, profile or rule of the trade.

Every widget takes the `Look` first and plain strings, numbers and callables after it, is drawn anew
when ``look.changed`` says so, can be reached by keyboard, has an accessible name, and is at least
12 mm each way where it can be pressed. All lengths that are passed in are millimetres.

Look(scheme, text_scale, px_per_mm)   inks, fonts and millimetres; changed; dress(application)
Inks, SCHEMES, palette                the colours of the schemes light, dark and sunlight

Text                                  wrapped words, with a semibold lead if wanted
SectionHead, ItemHead, Hairline       what stands over parts of a page, and parts them
SignLabel, paint_sign, sign_icon      a sign with its word; SIGNS, MARKS, SEEN, GRADES, RELATIONS name all

Key                                   hold("kept" | "chosen" | ""), turn_off(reason); clicked, refused
BareKey                               a key of one sign, without an outline
KeyRow, ChoiceKeys, Option            keys that wrap; keys of which one or several are held
MenuKey, WordList, offer              a list of words with signs, opened by a key or anywhere

Row, FactRow                          rows across a column, one of them with its source at the right
StationRow, Strip, Station            stations as rows, or beside one another
SafetyBlock                           what is unsafe, in words
LineField, TextField, ChoiceField     a label over a control; committed once a value, say(sentence)

CoverageBar, ScoreBar, MoveBars, Move charts; the page sets the sentence beside each
YearsChart, YearRow, Span             years across, rows by assembly
FigureCells, Cell, FigurePad          a number figure by figure in large cells, and keys to touch for it
NumberRow                             a row with a number as read, each doubtful figure with its line
Picture                               a photograph to read from, made larger and pulled about
Table                                 a small table of figures
OutlineView, Spot                     the drawing of a machine with a sign at each item

PageFrame, PageBar                    machine, pages, "kept 10:42" and undo round the open page
Columns, Column, Scroll               columns that become one; widgets one under the other; scrolling
"""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from inspector.window.look.bar import BareKey, PageBar, PageFrame
    from inspector.window.look.charts import CoverageBar, Move, MoveBars, ScoreBar
    from inspector.window.look.columns import Column, Columns
    from inspector.window.look.facts import FactRow, SafetyBlock
    from inspector.window.look.fields import ChoiceField, Field, LineField, TextField
    from inspector.window.look.figurepad import FigurePad
    from inspector.window.look.figures import Cell, FigureCells
    from inspector.window.look.inks import MARKS, SCHEMES, Inks, palette
    from inspector.window.look.keyrow import ChoiceKeys, KeyRow
    from inspector.window.look.keys import Key, Option
    from inspector.window.look.look import Look
    from inspector.window.look.menus import MenuKey, WordList, offer
    from inspector.window.look.numberrow import NumberRow
    from inspector.window.look.outline import OutlineView, Spot
    from inspector.window.look.picture import Picture
    from inspector.window.look.rows import Row
    from inspector.window.look.scroll import Scroll
    from inspector.window.look.signs import (
        GRADES,
        RELATIONS,
        SEEN,
        SIGNS,
        SignLabel,
        paint_sign,
        sign_icon,
        sign_width,
    )
    from inspector.window.look.stations import Station, StationRow, Strip
    from inspector.window.look.table import Table
    from inspector.window.look.text import Hairline, ItemHead, SectionHead, Text
    from inspector.window.look.years import Span, YearRow, YearsChart

# A page that needs three widgets does not wait for all of them.
HOMES = {
    "BareKey": "bar",
    "Cell": "figures",
    "ChoiceField": "fields",
    "ChoiceKeys": "keyrow",
    "Column": "columns",
    "Columns": "columns",
    "CoverageBar": "charts",
    "FactRow": "facts",
    "Field": "fields",
    "FigureCells": "figures",
    "FigurePad": "figurepad",
    "GRADES": "signs",
    "Hairline": "text",
    "Inks": "inks",
    "ItemHead": "text",
    "Key": "keys",
    "KeyRow": "keyrow",
    "LineField": "fields",
    "Look": "look",
    "MARKS": "inks",
    "MenuKey": "menus",
    "Move": "charts",
    "MoveBars": "charts",
    "NumberRow": "numberrow",
    "Option": "keys",
    "OutlineView": "outline",
    "PageBar": "bar",
    "PageFrame": "bar",
    "Picture": "picture",
    "RELATIONS": "signs",
    "Row": "rows",
    "SCHEMES": "inks",
    "SEEN": "signs",
    "SIGNS": "signs",
    "SafetyBlock": "facts",
    "ScoreBar": "charts",
    "Scroll": "scroll",
    "SectionHead": "text",
    "SignLabel": "signs",
    "Span": "years",
    "Spot": "outline",
    "Station": "stations",
    "StationRow": "stations",
    "Strip": "stations",
    "Table": "table",
    "Text": "text",
    "TextField": "fields",
    "WordList": "menus",
    "YearRow": "years",
    "YearsChart": "years",
    "offer": "menus",
    "paint_sign": "signs",
    "palette": "inks",
    "sign_icon": "signs",
    "sign_width": "signs",
}

__all__ = [
    "GRADES",
    "MARKS",
    "RELATIONS",
    "SCHEMES",
    "SEEN",
    "SIGNS",
    "BareKey",
    "Cell",
    "ChoiceField",
    "ChoiceKeys",
    "Column",
    "Columns",
    "CoverageBar",
    "FactRow",
    "Field",
    "FigureCells",
    "FigurePad",
    "Hairline",
    "Inks",
    "ItemHead",
    "Key",
    "KeyRow",
    "LineField",
    "Look",
    "MenuKey",
    "Move",
    "MoveBars",
    "NumberRow",
    "Option",
    "OutlineView",
    "PageBar",
    "PageFrame",
    "Picture",
    "Row",
    "SafetyBlock",
    "ScoreBar",
    "Scroll",
    "SectionHead",
    "SignLabel",
    "Span",
    "Spot",
    "Station",
    "StationRow",
    "Strip",
    "Table",
    "Text",
    "TextField",
    "WordList",
    "YearRow",
    "YearsChart",
    "offer",
    "paint_sign",
    "palette",
    "sign_icon",
    "sign_width",
]


def __getattr__(name: str) -> object:
    """A public name is loaded from its module when it is first asked for."""
    if name not in HOMES:
        raise AttributeError(f"{__name__} has no {name}")
    return getattr(import_module(f"{__name__}.{HOMES[name]}"), name)
