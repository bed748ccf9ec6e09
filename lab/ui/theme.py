"""Colours by what they mean."""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Theme:
    """One set of colours, each "#RRGGBB".

    paper, panel, wash: grounds.  ink: text, outlines, the one main action.  soft: second text.
    hair: rules, decoration only.
    edge: outlines of quiet controls.  track: what a slider has not reached.  on_dark: text upon ink.
    focus: the keyboard's ring.  The rest are meanings and materials; *_fill are grounds for text in ink;
    on_material: text on brass, wood and steel.
    """

    name: str
    paper: str
    panel: str
    wash: str
    ink: str
    soft: str
    hair: str
    edge: str
    track: str
    on_dark: str
    focus: str
    anticlockwise: str
    clockwise: str
    settled: str
    held: str
    anticlockwise_fill: str
    clockwise_fill: str
    settled_fill: str
    held_fill: str
    brass: str
    brass_edge: str
    wood: str
    wood_edge: str
    steel: str
    steel_edge: str
    skin: str
    on_material: str

    def color(self, token: str) -> str:
        """The colour of a token by its name; a "#..." passes as it is.  Raises KeyError if there is none."""
        if token.startswith("#"):
            return token
        if token == "name" or token not in self.__slots__:
            raise KeyError(f"theme {self.name} has no colour {token!r}")
        found: str = getattr(self, token)
        return found


PAPER = Theme(
    name="paper",
    paper="#F5F1E8",
    panel="#FFFDF7",
    wash="#EAE3D3",
    ink="#1E2A35",
    soft="#5A6672",
    hair="#D9D2C3",
    edge="#8E8778",
    track="#D9D2C3",
    on_dark="#FFFDF7",
    focus="#0072B2",
    anticlockwise="#0072B2",
    clockwise="#B04408",
    settled="#00795A",
    held="#F2C230",
    anticlockwise_fill="#D6EAF6",
    clockwise_fill="#F6DFD0",
    settled_fill="#CDE8DD",
    held_fill="#FBEECB",
    brass="#C9A24B",
    brass_edge="#8A6B22",
    wood="#D8B98A",
    wood_edge="#8F6F40",
    steel="#8D99A6",
    steel_edge="#1E2A35",
    skin="#E8C8A9",
    on_material="#1E2A35",
)

CONTRAST = Theme(
    name="contrast",
    paper="#0E1318",
    panel="#000000",
    wash="#232C35",
    ink="#FFFFFF",
    soft="#D3DAE0",
    hair="#59646F",
    edge="#AEB8C2",
    track="#59646F",
    on_dark="#000000",
    focus="#FFD84D",
    anticlockwise="#7CC7FF",
    clockwise="#FFAD7A",
    settled="#6FE3B8",
    held="#FFD84D",
    anticlockwise_fill="#0B2F47",
    clockwise_fill="#4A2108",
    settled_fill="#06402F",
    held_fill="#453807",
    brass="#C9A24B",
    brass_edge="#FFE2A0",
    wood="#B58F57",
    wood_edge="#F5DDB5",
    steel="#8D99A6",
    steel_edge="#FFFFFF",
    skin="#D9AE86",
    on_material="#000000",
)

PRINT = Theme(
    name="print",
    paper="#FFFFFF",
    panel="#FFFFFF",
    wash="#F2F2F2",
    ink="#000000",
    soft="#404040",
    hair="#BFBFBF",
    edge="#707070",
    track="#BFBFBF",
    on_dark="#FFFFFF",
    focus="#005A8C",
    anticlockwise="#005A8C",
    clockwise="#963600",
    settled="#00614A",
    held="#F2C230",
    anticlockwise_fill="#EAF3F9",
    clockwise_fill="#FAEDE4",
    settled_fill="#E3F2EC",
    held_fill="#FDF6DF",
    brass="#EBDCB4",
    brass_edge="#6E5519",
    wood="#EFE3CF",
    wood_edge="#6F5430",
    steel="#D2D7DC",
    steel_edge="#000000",
    skin="#F3E2D3",
    on_material="#000000",
)

THEMES: Mapping[str, Theme] = {theme.name: theme for theme in (PAPER, CONTRAST, PRINT)}
