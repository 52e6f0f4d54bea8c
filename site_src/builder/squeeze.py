"""Take out of styles and scripts what a browser does not need: comments, types, indents. Line numbers of scripts stay as they are."""

from __future__ import annotations

import re


def squeeze_css(text: str) -> str:
    """A style sheet without comments and spare white space; strings and addresses are left alone."""
    text = re.sub(r"/\*.*?\*/", "", text, flags=re.S)
    pieces = re.split(r'("[^"]*")', text)
    for number in range(0, len(pieces), 2):
        piece = re.sub(r"\s+", " ", pieces[number])
        piece = re.sub(r" ?([{};,]) ?", r"\1", piece)
        pieces[number] = re.sub(r": ", ":", piece.replace(";}", "}"))
    return "".join(pieces).strip() + "\n"


def squeeze_js(text: str) -> str:
    """A script without indents, without comments (lines that hold nothing else stay, empty), and without types.

    House style makes that safe: no text in a script goes over several lines, none holds the start of a type comment, and none has
    two strokes between blanks after a semicolon or a brace, as a comment behind a statement has.

    Examples
    --------
    >>> squeeze_js("// one\\n  const svg = 'http://x'; // two\\n")
    "\\nconst svg = 'http://x';\\n"
    """
    comment = re.compile(r"^[ \t]*(?:/\*\*(?:(?!\*/).)*\*/|//[^\n]*)[ \t]*$", re.S | re.M)
    text = comment.sub(lambda found: "\n" * found[0].count("\n"), text)
    text = re.sub(r"/\*\* @(?:type|param|returns)\b(?:(?!\*/).)*\*/ ?", "", text)
    text = re.sub(r"(?<=[;{]) // [^\n]*", "", text)
    return re.sub(r"^[ \t]+", "", text, flags=re.M)
