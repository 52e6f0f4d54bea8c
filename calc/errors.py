"""What can be wrong with an input, and the one table of the words for it.

An error names the field, what came, and what would do. Codes are stable; page,
shell and tests read the same wording from :data:`WORDS`. A question may bring
words of its own for codes that only it raises.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

#: Wording by code. ``label`` is the field's label, ``given`` what was typed;
#: the other names are details that the place which raises the error supplies.
WORDS: Mapping[str, str] = {
    "missing": "Enter {label_lower}. {would_do} would do.",
    "choose": "{label}: choose {options}.",
    "not-a-number": "{label}: '{given}' is not a number I can read. {would_do} would do.",
    "fraction": "{label}: '{given}' is not a fraction I can read. Write it like 13 3/4 or 5/8.",
    "comma": "{label}: the comma in '{given}' can be read two ways. Write {plain} or {decimal}.",
    "unit": "{label}: '{given_unit}' is not a unit I can use here. Use {units}.",
    "fluid-ounce": "{label}: fluid ounces are a volume, not a weight. Weigh it, and type oz or g.",
    "weight-ounce": "{label}: ounces (oz) are a weight, and this is a volume. Say US fl oz or imp fl oz.",
    "which-gallon": "{label}: US and Imperial {given_unit} differ. Write 'US {given_unit}' or 'imp {given_unit}'.",
    "not-positive": "{label}: {given} is not more than zero. {would_do} would do.",
    "too-small": "{label}: {given} is too small. {would_do} would do.",
    "too-large": "{label}: {given} is too large. {would_do} would do.",
    "too-cold": "{label}: {given} is colder than this can tell of. {would_do} would do.",
    "too-hot": "{label}: {given} is hotter than this can tell of. {would_do} would do.",
    "not-whole": "{label}: {given} is not a whole number. {would_do} would do.",
    "choice": "{label}: '{given}' is not one of the choices. Choose one of: {options}.",
    "ratio": "{label}: '{given}' is not a ratio I can read. Write it like 100:45 or 2:1, A first.",
    "clock": "{label}: '{given}' is not a time of day I can read. Write it like {would_do}.",
    "which-half": "{label}: '{given}' may be morning or evening. Write {morning} or {evening}.",
    "weight-size": "{label}: {given} for {across} across by {along} would be {found}; resin is about {usual}. Check the sizes and their units.",
    "too-few": "{label}: {count} came; {fewest} or more would do.",
    "too-many": "{label}: {count} values came; up to {most} would do.",
    "unknown-field": "'{given}' is not a field of this question. Its fields are {options}.",
}

#: How a suspected slip is put to the maker.
QUERY = "{label}: {given}{meaning}. Is that right?"


class InputError(Exception):
    """One field's input cannot be used.

    Parameters
    ----------
    name : the field's name; empty when no single field is to blame.
    code : a key of :data:`WORDS`, or of the question's own words.
    choices : texts that are likely meant, as ``(label, value)``.
    details : what the wording needs, beside the field's label and what was typed.
    """

    def __init__(self, name: str, code: str, choices: tuple[tuple[str, str], ...] = (), **details: str) -> None:
        super().__init__(f"{name}: {code}")
        self.name = name
        self.code = code
        self.choices = choices
        self.details = details


class InputErrors(Exception):
    """Several inputs cannot be used; all are told at once."""

    def __init__(self, errors: Iterable[InputError]) -> None:
        self.errors = tuple(errors)
        super().__init__(", ".join(str(error) for error in self.errors))


class RequestError(Exception):
    """The door was asked for something that does not exist (a caller's mistake)."""
