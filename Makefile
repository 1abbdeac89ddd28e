# Two commands on a fresh machine: `make site` builds the demo collection into site/, `make test` runs every test.
# Both set up what they need first (see .setup/setup.sh); `make help` lists the rest.

export NO_MKDOCS_2_WARNING = 1

ENGINE = pattern notation fabric measure review trade published demo

.DEFAULT_GOAL := help
.PHONY: help site test coverage serve check lint format golden faults fuzz mutants long bench pictures lock clean ready ready-test

help:            ## this list
	@sed -n 's/^\([a-z]*\):[^#]*## /  make \1	/p' Makefile | expand -t 18

ready:
	@sh .setup/setup.sh site

ready-test:
	@sh .setup/setup.sh test

site: ready      ## check the patterns of patterns/ and build the site and its booklets into site/
	.venv/bin/loopleaf build

serve: ready     ## show the site at a local address and renew it as you edit
	.venv/bin/mkdocs serve --livereload

# Tests start many processes: where compiled modules may not be kept, each of them compiles the package anew.
test: export PYTHONDONTWRITEBYTECODE =
test: ready-test ## run every test
	.venv/bin/python -m pytest -n 2 --dist loadfile --no-loadscope-reorder

coverage: ready-test ## the engine's branch coverage by its own rooms' tests, 95 % at least
	.venv/bin/python -m pytest -n 2 --dist loadfile --cov --cov-report=term $(addprefix tests/,$(ENGINE))

lint: ready      ## style and types
	.venv/bin/ruff check .
	.venv/bin/ruff format --check .
	.venv/bin/mypy

check: lint      ## everything: style, types, the patterns of the collection (warnings count), tests
	.venv/bin/loopleaf check --strict
	$(MAKE) --no-print-directory test

format: ready    ## put the code into the house's form
	.venv/bin/ruff check --fix .
	.venv/bin/ruff format .

faults: ready-test ## make mistakes in every right pattern and count how many are found (tests/quality/README.md)
	.venv/bin/python -m tests.quality.faults --workers $(or $(WORKERS),2)
	.venv/bin/python -m tests.quality.stated

fuzz: ready-test ## broken files through the check: no crash, no hang (NUMBER=200000)
	.venv/bin/python -m tests.quality.fuzz --workers $(or $(WORKERS),2) --number $(or $(NUMBER),200000)

mutants: ready-test ## change the engine's own code in many places and count what no test notices (SEED=1, WORKERS=1)
	.venv/bin/python -m tests.quality.mutation --seed $(or $(SEED),1) --workers $(or $(WORKERS),1)

long: ready-test ## all of quality at length: generated patterns and trees, faults, broken files, changed code
	$(MAKE) --no-print-directory coverage
	LOOPLEAF_GENERATED=20000 .venv/bin/python -m pytest -n 2 tests/quality
	.venv/bin/python -m tests.quality.written
	$(MAKE) --no-print-directory faults fuzz mutants

golden: ready-test ## write the expected outputs of the tests anew; read the difference before you commit it
	.venv/bin/python -m pytest --golden

bench: ready-test ## how long a site, a booklet and a check take, as ratios
	.venv/bin/python -m tests.benchmarks

pictures: ready-test site ## renew the README's pictures from the site just built
	.venv/bin/python .setup/pictures.py

lock:            ## renew requirements.txt, with the oldest and the newest Python it serves
	python3 .setup/lock.py python3.11 python3.13

clean:           ## remove what was built and what the tools keep (not the packages in .venv)
	rm -rf .loopleaf site dist build .pytest_cache .mypy_cache .ruff_cache .hypothesis .coverage htmlcov
