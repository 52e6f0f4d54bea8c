"""Turning a casting: speed, balance and mounts, on SI floats (spindle speed in rpm)."""
