"""The phone in the other hand: a small page on the local network, open only while it is wanted."""
