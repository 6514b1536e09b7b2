# The same recipes at the desk and in CI.
.PHONY: help demo check format lint types imports pages compiled collected test bench docs soak schema pictures pictures-bay pinned

UV := uv run --frozen --all-groups
export OPENBLAS_NUM_THREADS ?= 1
export OMP_NUM_THREADS ?= 1
# Many tests start the program anew: compiled once, it starts twice as fast.
unexport PYTHONDONTWRITEBYTECODE

help: ## list the recipes
	@grep -E '^[a-z-]+:.*##' $(MAKEFILE_LIST) | sed -E 's/:.*## / - /'

demo: ## one rig with one change: the answer in the terminal, the paper in out/heron.pdf
	@mkdir -p out
	uv run --frozen axlewright assess examples/rigs/heron.toml --with examples/changes/heavier-tube.toml --report out/heron.pdf

check: ## format, lint, types, import contracts, docs
	@$(MAKE) --no-print-directory -j 2 types format lint imports pages

format:
	$(UV) ruff format --check .
lint:
	$(UV) ruff check .
types:
	$(UV) mypy
imports:
	$(UV) lint-imports
pages:
	$(UV) mkdocs build --strict --quiet

# Done once, beside the checks: else each of three workers compiles the kernels and the tests.
compiled:
	$(UV) axlewright assess examples/rigs/heron.toml > /dev/null
	$(UV) axlewright travel examples/rigs/heron.toml > /dev/null
collected:
	@$(UV) pytest --collect-only -qq > /dev/null || true # what is wrong is told by the run itself

test: ## everything in check, and all tests
	@$(MAKE) --no-print-directory -j 2 types collected compiled format lint imports pages
	$(UV) pytest -n 3 --dist worksteal -q

bench: ## our kernels and answers beside general libraries, as ratios
	$(UV) python -m benchmarks

docs: ## build the docs into site/
	$(UV) mkdocs build --strict

soak: ## the long runs, with many more random examples
	AXLEWRIGHT_SOAK=1 $(UV) pytest -n 2 -q -m "soak or not soak"

schema: ## write again what is generated: the rig file's schemas and pages, the glossary's gaps
	$(UV) python -m tools.schema
	$(UV) python -m tools.rig_file_docs
	$(UV) python -m tools.glossary

pictures: ## draw again the answer that the README opens with
	$(UV) python -m tools.pictures

pictures-bay: ## take again the pictures of every page of the bay; needs a Chromium
	$(UV) python -m tools.bay_pictures

pinned: ## write again our own past numbers; say in CHANGELOG why they changed
	$(UV) python -m tools.pinned
