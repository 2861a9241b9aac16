//! Numbers of rules that were collected in a cell too say what the cell says. Anchorage has none: neither the limit of plate
//! washers nor those of sills were collected as cells.

use super::{assembly, query};
use crate::capacity::formula::evaluate;
use crate::capacity::pier::{RATIO_MOST, RATIO_MOST_UNBLOCKED};
use crate::capacity::*;
use crate::length::Length;
use crate::published::{Cell, Confidence, Grade, Pennyweight, cell};
use crate::reading::read_house;

const PROPORTIONS: &str = "max h/b_s (2008/2015 Table 4.3.4)";

fn listed(table: &str, key: &str) -> &'static Cell {
    cell(table, key).unwrap_or_else(|| panic!("{table}: {key}"))
}

/// What a cell's formula gives for a segment 8 ft high.
fn factor(cell: &Cell, ratio: f64) -> f64 {
    let input = |symbol: &str, value| Input {
        symbol: symbol.to_owned(),
        value,
        unit: "ft",
        source: String::new(),
    };
    let step = Step {
        symbol: String::new(),
        meaning: String::new(),
        formula: cell.value.to_owned(),
        inputs: vec![input("h", 8.0), input("b_s", 8.0 / ratio)],
        value: 0.0,
        unit: "",
        source: String::new(),
        confidence: Confidence::Memory,
    };
    evaluate(&step).unwrap()
}

fn close(one: f64, two: f64) -> bool {
    (one - two).abs() < 1e-9
}

#[test]
fn proportions_are_their_cells() {
    for (key, most) in [
        ("sheathing=WSP blocked", RATIO_MOST),
        ("sheathing=WSP unblocked", RATIO_MOST_UNBLOCKED),
    ] {
        assert_eq!(listed(PROPORTIONS, key).value, format!("{most}:1"));
    }
}

#[test]
fn losses_of_slender_segments_are_their_cells() {
    use Edition::{Sdpws2008, Sdpws2015};
    use LoadKind::{Seismic, Wind};
    use Sharing::{EqualDeflection, ReducedStrength};
    let cells = [
        (
            "aspect reduction seismic (2008; IBC 2006)",
            "WSP 2:1 < h/b <= 3.5:1",
            Sdpws2008,
            Seismic,
            ReducedStrength,
        ),
        (
            "aspect reduction for distribution in proportion to strength (2015/2021)",
            "WSP h/b > 2",
            Sdpws2015,
            Wind,
            ReducedStrength,
        ),
        (
            "aspect reduction on strength (2015/2021)",
            "WSP h/b > 2",
            Sdpws2015,
            Seismic,
            EqualDeflection,
        ),
    ];
    for (table, key, edition, load, sharing) in cells {
        let cell = listed(table, key);
        for ratio in [2.1, 2.5, 3.0, 3.5] {
            let pier = Pier {
                length: 8.0 / ratio,
                height: 8.0,
            };
            let found = pier.aspect_factor(edition, load, sharing, true);
            assert!(
                close(found.factor.unwrap(), factor(cell, ratio)),
                "{table} {ratio}"
            );
            assert_eq!(found.confidence, cell.confidence, "{table}");
        }
    }
}

#[test]
fn slip_and_rigidity_are_their_cells() {
    let table = "nail slip e_n in (commentary Table C4.2.2D)";
    for size in [Pennyweight::Six, Pennyweight::Eight, Pennyweight::Ten] {
        let SlipCurve { a, b, .. } = slip_curve(size).value;
        let key = format!("{} common dry", size.name());
        assert_eq!(listed(table, &key).value, format!("(V_n/{a})^{b}"));
    }
    let more = listed(table, "multiplier, panels other than Structural I");
    assert_eq!(more.value.parse(), Ok(grade_factor(Grade::Sheathing)));
    let table = "panel rigidity G_v t_v lb/in (commentary Table C4.2.2A)";
    let (osb, three) = (PanelMaterial::Osb, PanelMaterial::Plywood3);
    for (key, material, grade, categories) in [
        ("OSB 3/8 (24/0) and 5/16", osb, Grade::Sheathing, &[10, 12][..]),
        ("OSB 7/16 (24/16)", osb, Grade::Sheathing, &[14]),
        ("OSB 15/32 (32/16)", osb, Grade::StructuralI, &[15]),
        ("OSB 19/32 (40/20)", osb, Grade::Sheathing, &[19]),
        ("3-ply Sheathing 5/16 and 3/8", three, Grade::Sheathing, &[10, 12]),
        (
            "3-ply Sheathing 7/16 and 15/32",
            three,
            Grade::Sheathing,
            &[14, 15],
        ),
        ("3-ply Sheathing 19/32", three, Grade::Sheathing, &[19]),
        (
            "3-ply Structural I 5/16 and 3/8",
            three,
            Grade::StructuralI,
            &[10, 12],
        ),
        (
            "3-ply Structural I 7/16 and 15/32",
            three,
            Grade::StructuralI,
            &[14, 15],
        ),
    ] {
        for thirty_seconds in categories {
            let thickness = Length::from_units(Length::PER_INCH * thirty_seconds / 32);
            let found = rigidity(material, grade, thickness).unwrap();
            assert_eq!(listed(table, key).value.parse(), Ok(found.value), "{key}");
        }
    }
}

/// What a house's framing weighs where nobody says it.
#[test]
fn the_gravity_of_framing_is_its_cell() {
    let text = br#"{"walls": [{"name": "w", "length": "8'", "sections": [{"bottom": {"bears": "concrete"},
        "stack": [{"kind": "storey", "name": "ground", "bottom_plates": [{"treated": true}]}]}]}]}"#;
    let (_, assumed) = read_house(text).unwrap();
    let gravity = assumed
        .iter()
        .find(|assumed| assumed.path.ends_with("/species/specific_gravity"))
        .unwrap();
    let cell = listed(
        "framing specific gravity G (NDS Table 12.3.3A)",
        "Spruce-Pine-Fir",
    );
    assert_eq!(gravity.value, cell.value);
}

/// The factor for framing, 1 - (0.5 - G), is 1 at the gravity that the tables are made for and for heavier framing.
#[test]
fn listed_species_take_the_factor_of_their_gravity() {
    let table = "framing specific gravity G (NDS Table 12.3.3A)";
    let factors = [
        ("Douglas Fir-Larch", 1.0),
        ("Southern Pine", 1.0),
        ("Hem-Fir", 0.93),
        ("Spruce-Pine-Fir", 0.92),
        ("SPF (South)", 0.86),
        ("Western Cedars", 0.86),
    ];
    for (species, wanted) in factors {
        let mut asked = query(assembly(Grade::Sheathing, "7/16", Pennyweight::Eight, 6));
        asked.assembly.specific_gravity = listed(table, species).value.parse().unwrap();
        assert!(close(unit_shear(&asked).unwrap().species, wanted), "{species}");
    }
}
