"""Tiltbench: a lab for learning where things balance."""

__version__ = "0.1.0"
