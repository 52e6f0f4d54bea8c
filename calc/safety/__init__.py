"""Staying whole: gates that compare a plan with its limits, and the checklists that use them."""
