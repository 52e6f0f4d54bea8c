"""Makers' text to SI floats and back.

A maker types ``13 3/4``, ``13-3/4 in``, ``5/8"``, ``2,5``, ``1' 1 3/4"``,
``1.2 kg``, ``1 lb 3 oz`` or ``70 F``. :func:`calc.quantity.reading.read` turns that into a float in SI
(spindle speed stays in rpm); :func:`calc.quantity.writing.write` turns a float into what a maker
reads, rounded the way its use asks for.
"""
