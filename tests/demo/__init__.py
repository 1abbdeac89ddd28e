"""The demo collection, checked by hand-made counting that shares nothing with the engine."""
