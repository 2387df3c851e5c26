"""A class's table of cuts: typed on phones, seen on the projector, kept nowhere but in memory."""
