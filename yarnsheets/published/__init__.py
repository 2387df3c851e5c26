"""Published values of one subject a module, each with its unit, range and source."""
