"""Bags as RFC 8493 has them: written as one zip, read with distrust, checked file by file."""
