"""Where the toolkit's own files lie: beside the sources in the repository, inside the package in a wheel."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent
_PLACES = (_PACKAGE / "shipped" / "assets", _PACKAGE.parent / "assets")


def asset_folder() -> Path:
    """The folder with the shipped fonts; where none is found, the place at which it was expected."""
    return next((place for place in _PLACES if (place / "fonts").is_dir()), _PLACES[0])


def font_file(*, bold: bool, folder: Path | None = None) -> Path:
    """The font file of a face; it may be missing, then whoever draws says so."""
    return (folder or asset_folder()) / "fonts" / ("Andika-Bold.ttf" if bold else "Andika-Regular.ttf")


def width_table_file(folder: Path | None = None) -> Path:
    """The table of character widths made from the shipped fonts."""
    return (folder or asset_folder()) / "fonts" / "andika-widths.json"
