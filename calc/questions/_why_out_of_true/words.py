"""Why is it out of true? What each cause is called, how it is told from the others, what is done about it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Cause:
    """A cause in words: its name, what the headline says to do (a few words, then the rest), and the test that tells it."""

    name: str
    do: str
    say: str
    test: str


CAUSES = {
    "seat": Cause(
        "Mount or spindle seat",
        "Seat it again",
        "Clean thread and shoulder, screw it home, measure again. Cut nothing before that.",
        "Seat it half a turn round, or on another mount. If the high spot stays with the spindle or mount, it is the seat.",
    ),
    "recentred": Cause(
        "Sits off centre on its mount",
        "True it up",
        "It was mounted a little off. Check that the block runs true, then take light cuts, or shift the piece by half the runout.",
        "Measure block and piece. Block true, piece out, and no change cold or warm: it sits off centre.",
    ),
    "caught": Cause(
        "A catch moved or cracked it",
        "Look and knock first",
        "Lathe off. Push the rim by hand: {gives}. Look all round for a crack, and knock. Found one: do not spin it. Then list C6, before power.",
        "Lathe off: push the rim, look at the mount, look all round for a crack and knock.",
    ),
    "creep": Cause(
        "Glue gives, or screws are loose",
        "Stop turning",
        "Lathe off. Push the rim by hand. If it gives, hold it, take it off, and glue or screw it anew. If not, measure again{cold}. True nothing before.",
        "Push the rim by hand, lathe off: any give, or a line opening at the glue.",
    ),
    "slipped": Cause(
        "It moved in its hold",
        "Stop turning",
        "{moved} Then hold it anew and measure again. True nothing before.",
        "Push the rim by hand, lathe off, and look where it is held.",
    ),
    "side-heat": Cause(
        "Warmer on one side",
        "Let it cool",
        "Slowly turned, or flat on battens, out of sun and draught. Then measure before you cut.",
        "Feel side against side. Measure again cold: it is gone.",
    ),
    "gradient": Cause(
        "Warmer on one face",
        "Let it cool",
        "Both faces open, on battens, if it can come off. Then measure before you cut.",
        "Measure again cold: flat again, or nearly.",
    ),
    "layers": Cause(
        "Wood layer and resin grow apart",
        "Let it cool",
        "It lies flat only about as warm as it was when you made it flat. Measure at the warmth it will live in.",
        "Measure cold and at house warmth: it follows the warmth, back and forth.",
    ),
    "moisture": Cause(
        "The wood takes or loses water",
        "Weigh it daily",
        "Leave it in the air it will live in. True it when its weight stays within 0.1 % a day.",
        "Weigh it daily. The weight changes with the shape: it is water.",
    ),
    "stress": Cause(
        "Stress let go by hollowing",
        "Let it rest",
        "Leave it some days, measure daily, and true it lightly when it has stopped.",
        "Weigh it daily. It moves but its weight does not: it is stress.",
    ),
    "one-sided": Cause(
        "Cut more from one face",
        "Let it rest",
        "Measure again in a day or two. When it has stopped, take as much from the other face, a little from each in turn.",
        "Measure daily: it settles, and cold or warm makes no difference.",
    ),
}
SCREWED = Cause(
    "Screws are loose",
    "Stop turning",
    "Lathe off. Push the rim by hand. If it gives, hold it, take it off, and screw it anew. If not, measure again{cold}. True nothing before.",
    "Push the rim by hand, lathe off: any give, or a gap at the plate.",
)
#: What a push shows where a mount has given, by what holds it.
GIVES = {
    "glue": "any give, or a line at the glue, and it comes off to be glued anew",
    "faceplate": "any give, or a gap at the plate, and it comes off to be screwed anew",
    "chuck": "any give, or a crushed or cracked tenon, and it comes off for a fresh one",
    "centres": "any give, or a torn mark at either end, and it comes off for fresh ones",
}
#: Where to look when it moved in its hold.
MOVED = {
    "chuck": "Lathe off. Push the rim by hand. Crushed, cracked or shrunk, a tenon is cut fresh.",
    "centres": "Lathe off. Push the rim by hand. Torn or worn, the marks of spur and centre are made fresh.",
}
#: What is done with a mount that has opened or shifted.
ANEW = {
    "glue": "Hold it, take it off, clean both faces, and glue it anew.",
    "faceplate": "Hold it, take it off, and screw it anew, in fresh holes.",
    "chuck": "Hold it, take it off, and cut a fresh tenon.",
    "centres": "Hold it, take it off, and set it between fresh marks.",
}


def cause_of(name: str, hold: str) -> Cause:
    """A cause in the words of what holds the piece.

    Parameters
    ----------
    name : a key of :data:`CAUSES`.
    hold : ``glue``, ``faceplate``, ``chuck`` or ``centres``.

    Returns
    -------
    Cause
    """
    return SCREWED if name == "creep" and hold == "faceplate" else CAUSES[name]


ODDS = ("likeliest", "next", "possible")
SIGNS = {
    "rim-once": "rim, once a turn",
    "face-once": "face, once a turn",
    "rim-twice": "rim, twice a turn",
    "face-twice": "face, twice a turn",
    "dish": "face dished all round",
}
WORDS = {
    "not-warmer": "{label}: {given} is not warmer than the shop, {room}. Choose 'Cold, like the shop', or read again.",
    "more-than-warm": "{label}: {given} is more than the whole piece is over the shop, {excess}. Read again.",
    "off-the-rim": "{label}: {given} is as much as the piece, {diameter} across. Look at the unit, and measure again.",
    "wider": "{label}: {given} is wider than the piece, {diameter}.",
    "no-resin": "{label}: {given} leaves no resin on a piece {thickness} thick.",
}
