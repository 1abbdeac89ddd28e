"""How good the engine is, measured: a second little model, faults made on purpose, broken files."""
