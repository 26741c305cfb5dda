"""The addresses on which the page may be opened: one of a local network, never all at once."""

from __future__ import annotations

from dataclasses import dataclass
from ipaddress import IPv4Address, ip_address
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable


@dataclass(frozen=True, slots=True)
class Place:
    """An address of this computer, and the network connection it belongs to by its name."""

    address: str
    name: str


def usable(places: Iterable[Place]) -> tuple[Place, ...]:
    """Those that a phone on the same local network can reach, in their order, each once."""
    found = {place.address: place for place in places if is_local(place.address) and not _own(place.address)}
    return tuple(found.values())


def is_local(address: str) -> bool:
    """Whether this is one address, of version 4, that the wide internet does not reach."""
    try:
        there = ip_address(address)
    except ValueError:
        return False
    every = there.is_unspecified or there.is_multicast or there.is_reserved
    return isinstance(there, IPv4Address) and there.is_private and not every


def _own(address: str) -> bool:
    return ip_address(address).is_loopback
