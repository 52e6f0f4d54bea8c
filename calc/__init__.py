"""The trade as arithmetic: casting wood with clear resin, and turning the blank.

Floor 1 is quantities, fields, sources and errors; floor 2 the trade topics
(``casting``, ``turning``, ``safety``) on SI floats; floor 3 the questions a
maker asks. The one door in and out is :mod:`calc.desk`.
"""

__version__ = "0.1.0"
