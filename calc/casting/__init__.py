"""Casting: wood and resin in one mould. Pure functions on SI floats."""
