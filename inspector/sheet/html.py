"""A composed sheet as one HTML page that any browser shows without a network: text, and links to photographs."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING, NamedTuple

from inspector.sheet.text import block_lines, shown
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from inspector.sheet.blocks import Sheet

SHOWN_BY_BROWSERS = (".jpg", ".jpeg", ".png", ".webp")
STYLE = """
body { max-width: 46rem; margin: 2rem auto; padding: 0 1rem; font: 1rem/1.5 "Source Sans 3", "Segoe UI", sans-serif;
       color: #1b2230; background: #fbf9f4; }
h1 { font-size: 1.6rem; margin-bottom: .2rem; } h2 { font-size: 1.15rem; margin: 1.8rem 0 .4rem;
     border-bottom: 1px solid #1b2230; }
p { margin: .25rem 0; white-space: pre-wrap; } .in { margin-left: 1.5rem; } .deep { margin-left: 3rem; }
figure { margin: 1.2rem 0; } img { max-width: 100%; height: auto; } figcaption { font-size: .9rem; }
@media print { body { margin: 0; max-width: none; } figure { break-inside: avoid; } }
"""


class Linked(NamedTuple):
    """A photograph beside the page: where it is, relative to it, and what it shows."""

    address: str
    caption: str


def as_html(sheet: Sheet, photographs: Iterable[Linked] = ()) -> str:
    """The whole sheet in order, then the photographs; no script, and nothing fetched."""
    body = "\n".join((*_head(sheet), *_parts(sheet), *_figures(photographs), _line(sheet.foot)))
    title = escape(shown(f"{sheet.title}: {sheet.machine}"))
    return (
        f'<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<title>{title}</title>\n'
        '<meta name="viewport" content="width=device-width">\n<meta name="referrer" content="no-referrer">\n'
        f"<style>{STYLE}</style>\n</head>\n<body>\n{body}\n</body>\n</html>\n"
    )


def _head(sheet: Sheet) -> Iterator[str]:
    yield f"<h1>{escape(shown(sheet.title))}</h1>"
    yield from (_line(line) for line in sheet.stamp)


def _parts(sheet: Sheet) -> Iterator[str]:
    for block in sheet.blocks:
        title, *lines = block_lines(block)
        yield f"<h2>{escape(shown(title))}</h2>"
        yield from (_line(line) for line in lines)


def _line(text: str) -> str:
    deep = len(text) - len(text.lstrip(" "))
    kind = "" if not deep else ' class="in"' if deep < 4 else ' class="deep"'
    return f"<p{kind}>{escape(shown(text.strip()))}</p>"


def _figures(photographs: Iterable[Linked]) -> Iterator[str]:
    linked = tuple(photographs)
    if linked:
        yield f"<h2>{escape(tr('Photographs'))}</h2>"
    for one in linked:
        address, caption = escape(one.address, quote=True), escape(shown(one.caption))
        shows = one.address.lower().endswith(SHOWN_BY_BROWSERS)
        inner = f'<img src="{address}" alt="{escape(shown(one.caption), quote=True)}" loading="lazy">' if shows else ""
        yield f'<figure><a href="{address}">{inner or escape(tr("open the photograph"))}</a>'
        yield f"<figcaption>{caption}</figcaption></figure>"
