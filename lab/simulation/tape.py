"""Tapes: everything that happened in a session, as lines of JSON that replay to the last bit."""

from __future__ import annotations


class Tape:
    """Records one session in memory. ``text()`` is the tape so far, JSON lines."""
