"""`python -m loopleaf` is the command line."""

from .cli import main

main(prog_name="loopleaf")
