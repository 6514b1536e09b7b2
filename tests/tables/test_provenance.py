"""Every row says where it comes from, and what was not read carries its doubt."""

import ast
import csv
import dataclasses
import subprocess
import sys
from pathlib import Path

import pytest

from axlewright import tables
from axlewright.errors import UnknownEntry
from axlewright.tables.reading import number
from axlewright.tables.sources import DATA, origin
from house.citations import keys, references

FILES = sorted(path.stem for path in DATA.glob("*.csv"))
DOCS = Path(__file__).parents[2] / "docs" / "tables.md"
READERS = {
    "materials": tables.materials,
    "hardness": tables.hardnesses,
    "fasteners": tables.fastener_grades,
    "threads": tables.threads,
    "friction": tables.frictions,
    "surface_finish": tables.surface_finishes,
    "splines": tables.splines,
    "spline_allowables": tables.spline_allowables,
    "spline_application": tables.spline_applications,
    "spline_life": tables.spline_lives,
    "spline_misalignment": tables.spline_misalignments,
    "cross_joints": tables.cross_joints,
    "cross_joint_ratios": tables.cross_joint_ratios,
    "hub_bearings": tables.hub_bearings,
    "hub_bearing_fits": tables.hub_bearing_fits,
    "weld_details": tables.weld_details,
    "endurance_curves": tables.endurance_curves,
    "scatter": tables.scatters,
    "severities": tables.severities,
    "duties": tables.duties,
    "duty_counts": tables.duty_counts,
    "load_index": tables.load_indices,
    "speed_symbols": tables.speed_symbols,
    "consequences": tables.consequences,
    "limits": tables.limits,
    "driveline_limits": tables.driveline_limits,
    "looks": tables.looks,
    "looks_lists": tables.looks_lists,
    "intervals": tables.intervals,
    "order_fields": tables.order_fields,
    "procedures": tables.procedures,
    "readings_parts": tables.reading_parts,
    "procedures_steps": tables.procedure_steps,
    "shimmy_checks": tables.shimmy_checks,
    "shimmy_noticed": tables.shimmy_questions,
    "looks_stops": tables.look_stops,
    "looks_beyond": tables.looks_beyond,
    "spares": tables.spares,
    "cards": tables.cards,
    "cards_steps": tables.card_steps,
    "tasks": tables.tasks,
    "tasks_bolts": tables.task_bolts,
    "tasks_gate": tables.gate_questions,
    "tasks_measures": tables.swap_measures,
    "troubles": tables.troubles,
    "strandings": tables.strandings,
    "instruments": tables.instruments,
    "alignment_marks": tables.alignment_marks,
    "alignment_targets": tables.alignment_targets,
    "locator_causes": tables.locator_causes,
    "locator_likelihoods": tables.locator_likelihoods,
    "locator_readings": tables.locator_readings,
    "locator_jobs": tables.locator_jobs,
    "locator_doubts": tables.locator_doubts,
    "options": tables.options,
    "options_steps": tables.option_steps,
    "options_mends": tables.option_mends,
    "options_doubts": tables.option_doubts,
    "options_tyres": tables.option_tyres,
    "locator_evidence": tables.locator_evidence,
}


def text_rows(name: str) -> list[dict[str, str]]:
    with (DATA / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_each_file_has_a_reader_and_a_place_in_the_catalogue() -> None:
    assert set(FILES) == set(READERS) == set(tables.catalogue())


@pytest.mark.parametrize("name", FILES)
def test_reader_hands_out_every_row_once(name: str) -> None:
    entries = READERS[name]()
    keys = [row["key"] for row in text_rows(name)]
    assert list(entries) == keys
    assert len(set(keys)) == len(keys)
    assert READERS[name]() is entries, "read again instead of remembered"


@pytest.mark.parametrize("name", FILES)
def test_every_row_has_a_known_source_and_a_locator(name: str) -> None:
    for row in text_rows(name):
        assert row["source"] in tables.sources(), row["key"]
        known = tables.sources()[row["source"]]
        if known.kind not in {"memory", "practice"}:
            assert row["locator"].strip(), f"{row['key']} names a source but no place in it"


@pytest.mark.parametrize("name", FILES)
def test_what_was_not_read_carries_at_least_one_and_a_half(name: str) -> None:
    for row in text_rows(name):
        read = origin(row)
        assert read.spread >= (1.5 if read.remembered else 1.0), row["key"]


@pytest.mark.parametrize("name", ["materials", "friction", "scatter"])
def test_a_remembered_band_is_as_wide_as_its_spread(name: str) -> None:
    pairs = [("yield_low_MPa", "yield_high_MPa"), ("ultimate_low_MPa", "ultimate_high_MPa")]
    pairs = pairs if name == "materials" else [("low", "high")]
    seen = 0
    for row in text_rows(name):
        if not origin(row).remembered:
            continue
        for low, high in pairs:
            seen += 1
            width = float(row[high]) / float(row[low])
            assert width >= 0.98 * float(row["spread"]) ** 2, row["key"]  # printed digits
    assert seen


def test_every_source_is_used_and_of_a_known_kind() -> None:
    used = {row["source"] for name in FILES for row in text_rows(name)}
    used |= set().union(*(keys(text) for _, text in references()))
    assert used == set(tables.sources())
    kinds = {
        *("standard", "textbook", "paper", "manual", "regulation"),
        *("software", "web", "practice", "memory"),
    }
    assert {source.kind for source in tables.sources().values()} <= kinds


def blocks() -> dict[str, str]:
    """Text of every test of the tables, with its decorators, by name."""
    found = {}
    for path in sorted(Path(__file__).parent.glob("test_*.py")):
        text = path.read_text(encoding="utf-8")
        for node in ast.parse(text).body:
            if isinstance(node, ast.FunctionDef):
                first = min([node.lineno, *(mark.lineno for mark in node.decorator_list)])
                found[node.name] = "\n".join(text.splitlines()[first - 1 : node.end_lineno])
    return found


@pytest.mark.parametrize("name", FILES)
def test_who_is_named_as_a_check_does_check(name: str) -> None:
    """A test is named only where it names the row, the row's grade, or reads the whole table."""
    whole = f"tables.{READERS[name].__name__}()"
    for row in text_rows(name):
        if not row["checked_by"]:
            continue
        block = blocks()[row["checked_by"]]
        named = {row["key"], row.get("grade", row["key"])}
        assert whole in block or any(each in block for each in named), row["key"]


def test_what_was_read_is_mostly_checked() -> None:
    """Rows from a printed source, not from memory: three in four have a test of their own."""
    read = [row for name in FILES for row in text_rows(name) if not origin(row).remembered]
    assert sum(bool(row["checked_by"]) for row in read) >= 0.75 * len(read)


def test_every_table_stands_in_the_docs() -> None:
    told = DOCS.read_text(encoding="utf-8")
    missing = [name for name in FILES if f"| `{name}` |" not in told]
    assert not missing


def test_entries_cannot_be_changed() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        tables.material("dom_1020").yield_low = 1.0  # type: ignore[misc]
    assert not hasattr(tables.material("dom_1020"), "__dict__")


@pytest.mark.parametrize(
    ("ask", "given", "offered"),
    [
        (tables.material, "dom_1200", "dom_1020"),
        (tables.weld_detail, "plate_along_tube_to_80", "plate_along_tube_to_80mm"),
        (tables.thread, "m12x1.75", "M12x1.75"),
        (tables.consequence, "knuckle_lft", "knuckle_left"),
        (tables.duty, "forest_road", "forest_roads"),
        (tables.severity, "brakeing", "braking"),
    ],
)
def test_a_misspelt_name_is_met_with_a_near_one(ask, given: str, offered: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(UnknownEntry) as caught:
        ask(given)
    assert given in str(caught.value)
    assert offered in str(caught.value)


def test_a_name_like_no_other_is_met_with_examples() -> None:
    with pytest.raises(UnknownEntry, match="Known are gravel_and_farm_tracks"):
        tables.duty("zzz")


def test_an_unknown_source_is_refused() -> None:
    row = {"source": "hearsay", "locator": "", "checked_by": "", "spread": "1"}
    with pytest.raises(UnknownEntry, match="hearsay"):
        origin(row)


@pytest.mark.parametrize(
    ("column", "text", "value"),
    [
        ("yield_MPa", "345", 345e6),
        ("E_GPa", "205", 205e9),
        ("dynamic_kN", "53", 53e3),
        ("cap_mm", "30.2", 0.0302),
        ("area_mm2", "84.3", 84.3e-6),
        ("distance_km", "8000", 8e6),
        ("value", "0.6", 0.6),
        ("high", "5e-05", 5e-5),
        ("gap_mm", "5e-2", 5e-5),
        ("cut_off_cycles", "100000000.0", 1e8),
    ],
)
def test_a_columns_name_tells_its_power_of_ten(column: str, text: str, value: float) -> None:
    assert number({column: text}, column) == pytest.approx(value, rel=1e-15)


def test_fingerprint_is_that_of_the_data() -> None:
    print_ = tables.fingerprint()
    assert len(print_) == 64
    assert int(print_, 16) > 0


def test_importing_the_tables_is_light_and_reads_nothing() -> None:
    asked = (
        "import sys, axlewright.tables as t;"
        "heavy = {'numpy', 'scipy', 'pydantic', 'numba', 'difflib'} & set(sys.modules);"
        "assert not heavy, heavy;"
        "assert not t.materials.cache_info().currsize;"
        "assert not t.sources.cache_info().currsize"
    )
    subprocess.run([sys.executable, "-c", asked], check=True)


def test_all_is_what_the_room_offers() -> None:
    assert sorted(tables.__all__) == list(tables.__all__)
    assert all(hasattr(tables, name) for name in tables.__all__)
