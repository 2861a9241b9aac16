//! Reading as a whole: defaults, faults, and a house that is written and read again.

use super::{Assumed, read_house};
use crate::house::{House, Level};
use crate::issue::{Code, Issue};
use crate::length::Length;

const DEMO: &str = include_str!("../demo/house.json");

fn read(text: &str) -> (House, Vec<Assumed>) {
    read_house(text.as_bytes()).unwrap_or_else(|issues| panic!("{issues:#?}"))
}

fn faults(text: &str) -> Vec<(Code, String)> {
    let issues = read_house(text.as_bytes()).unwrap_err();
    issues
        .into_iter()
        .map(|issue: Issue| (issue.code, issue.path))
        .collect()
}

/// The house as a plan writes it.
fn written(house: &House, assumed: &[Assumed]) -> serde_json::Value {
    let mut value = serde_json::to_value(house).unwrap();
    value["length_unit"] = serde_json::json!({ "per_inch": 40_640 });
    value["assumed"] = serde_json::to_value(assumed).unwrap();
    value
}

fn any_pointer_at(text: &str, pointer: &str) -> bool {
    let (_, assumed) = read(text);
    assumed.iter().any(|value| value.path == pointer)
}

#[test]
fn the_demo_house_is_read() {
    let (house, assumed) = read(DEMO);
    assert_eq!(house.walls.len(), 8);
    assert!(!assumed.is_empty());
    assert!(assumed.iter().all(|value| !value.why.is_empty()), "{assumed:#?}");
}

#[test]
fn what_is_written_is_read_as_the_same_house_with_the_same_choices() {
    let two_walls = r#"{"walls": [{"name": "n", "length": "8'", "practice": {"gap": "1/16"}}, {"name": "s", "length": "97 1/3"}]}"#;
    for text in [DEMO, r#"{"walls": [{"name": "n", "length": "8'"}]}"#, two_walls] {
        let (house, assumed) = read(text);
        let (again, carried) = read(&written(&house, &assumed).to_string());
        assert!(again == house);
        let lost: Vec<_> = assumed.iter().filter(|value| !carried.contains(value)).collect();
        assert!(lost.is_empty(), "{lost:#?}");
        assert_eq!(carried, assumed);
    }
}

#[test]
fn a_choice_that_is_no_longer_true_is_not_carried_on() {
    let (house, assumed) = read(r#"{"walls": [{"name": "n", "length": "8'"}]}"#);
    let mut again = written(&house, &assumed);
    again["walls"][0]["practice"]["gap"] = serde_json::json!("1/16\"");
    again["rates"]["set_8"] = serde_json::json!(8);
    again["walls"][0]["sections"][0]["stack"][0]["top_plates"][0]["treated"] = serde_json::json!(true);
    again["drawn_in"] = serde_json::json!("millimetres");
    let (_, carried) = read(&again.to_string());
    let paths = |list: &[Assumed]| list.iter().map(|value| value.path.clone()).collect::<Vec<_>>();
    let changed = [
        "/practice/gap",
        "/rates/set_8",
        "/walls/0/sections/0/stack/0/top_plates/0/treated",
        "/drawn_in",
    ];
    let mut kept = paths(&assumed);
    kept.retain(|path| !changed.contains(&path.as_str()));
    assert_eq!(kept.len() + changed.len(), assumed.len());
    let carried = paths(&carried);
    let lost: Vec<_> = kept.iter().filter(|path| !carried.contains(path)).collect();
    assert!(lost.is_empty(), "{lost:?}");
    let stale: Vec<_> = carried.iter().filter(|path| !kept.contains(path)).collect();
    assert!(stale.is_empty(), "{stale:?}");
    assert_eq!(carried, kept);
}

#[test]
fn a_name_and_a_length_are_a_wall() {
    let (house, assumed) = read(r#"{"walls": [{"name": "north", "length": "32'"}]}"#);
    let wall = &house.walls[0];
    let section = &wall.sections[0];
    assert_eq!((section.from, section.to), (Length::ZERO, Length::feet(32)));
    let [Level::Storey(storey)] = section.stack.as_slice() else {
        panic!("one storey")
    };
    // Common practice, no source: precut studs of 92 5/8 in. and three plates of 1 1/2 in. make 97 1/8 in.
    let plates: Length = storey
        .bottom_plates
        .iter()
        .chain(&storey.top_plates)
        .map(|plate| plate.thickness)
        .sum();
    assert_eq!(
        plates + storey.stud.length,
        Length::inches(97) + Length::sixteenths(2)
    );
    let listed = |path: &str| assumed.iter().filter(|value| value.path == path).count();
    assert_eq!(listed("/practice/gap"), 1);
    assert_eq!(listed("/walls/0/sections/0/stack/0/stud/length"), 1);
    assert_eq!(listed("/stock/sheets"), 1);
    let mut paths: Vec<&str> = assumed.iter().map(|value| value.path.as_str()).collect();
    paths.sort_unstable();
    assert!(paths.windows(2).all(|pair| pair[0] != pair[1]), "{paths:#?}");
}

#[test]
fn a_wall_inherits_what_it_does_not_say() {
    let (house, assumed) = read(
        r#"{"practice": {"gap": "1/16", "assembly": {"edge_spacing": "4"}},
            "walls": [{"name": "a", "length": "8'", "practice": {"kerf": "3/16", "assembly": {"field_spacing": "6"}}},
                      {"name": "b", "length": "8'", "practice": {"kerf": "3/16"}}]}"#,
    );
    let [a, b] = house.walls.as_slice() else {
        panic!("two walls")
    };
    assert_eq!(
        (a.practice.gap, a.practice.kerf),
        (Length::sixteenths(1), Length::sixteenths(3))
    );
    assert_eq!(a.practice.assembly.edge_spacing, Length::inches(4));
    assert_eq!(a.practice.assembly.field_spacing, Length::inches(6));
    assert_eq!(b.practice.assembly.field_spacing, Length::inches(12));
    let listed = |path: &str| assumed.iter().any(|value| value.path == path);
    assert!(!listed("/practice/kerf"), "no wall uses it");
    assert!(listed("/practice/held_up") && listed("/practice/assembly/field_spacing"));
}

#[test]
fn numbers_are_in_the_unit_that_the_document_says() {
    let house = |unit: &str| format!(r#"{{{unit} "walls": [{{"name": "n", "length": 3}}]}}"#);
    let length = |text: &str| read(text).0.walls[0].length;
    assert_eq!(length(&house(r#""unit": "m","#)), Length::mm(3000));
    assert_eq!(length(&house(r#""unit": "ft","#)), Length::feet(3));
    assert_eq!(length(&house("")), Length::inches(3));
    assert!(any_pointer_at(&house(""), "/unit"));
    assert!(!any_pointer_at(&house(r#""unit": "in","#), "/unit"));
}

#[test]
fn a_rounded_length_is_listed() {
    let (house, assumed) = read(r#"{"walls": [{"name": "n", "length": "97 1/3"}]}"#);
    let rounded = assumed
        .iter()
        .find(|value| value.path == "/walls/0/length")
        .unwrap();
    assert_eq!(
        rounded.value,
        format!("{}/40640 in.", house.walls[0].length.units())
    );
}

#[test]
fn every_fault_is_listed_in_the_order_of_the_document() {
    let found = faults(
        r#"{"nme": "x", "unit": "yd",
            "walls": [{"name": "", "length": "8-1", "face": "outward", "sections": [{"stack": [
              {"kind": "storey", "spaceing": 16, "openings": [
                {"name": "w", "kind": "window", "left": "4'", "width": -3, "height": [], "trimmers": 1.5}]}]}]},
              7],
            "corners": {}}"#,
    );
    let expected = [
        (Code::UnknownField, "/nme"),
        (Code::NotAChoice, "/unit"),
        (Code::EmptyText, "/walls/0/name"),
        (Code::AmbiguousLength, "/walls/0/length"),
        (Code::NotAChoice, "/walls/0/face"),
        (Code::UnknownField, "/walls/0/sections/0/stack/0/spaceing"),
        (Code::MissingField, "/walls/0/sections/0/stack/0/openings/0/sill"),
        (Code::OutOfRange, "/walls/0/sections/0/stack/0/openings/0/width"),
        (Code::WrongKind, "/walls/0/sections/0/stack/0/openings/0/height"),
        (Code::NotWhole, "/walls/0/sections/0/stack/0/openings/0/trimmers"),
        (Code::WrongKind, "/walls/1"),
        (Code::WrongKind, "/corners"),
    ];
    assert_eq!(found, expected.map(|(code, path)| (code, path.to_owned())));
}

#[test]
fn faults_say_what_is_meant() {
    let issues = read_house(br#"{"walls": [{"name": "north", "lenght": "8'"}]}"#).unwrap_err();
    assert!(
        issues
            .iter()
            .any(|issue| issue.message.contains("perhaps `length` is meant") && issue.wall == "north")
    );
}

/// A wall of 16 ft with these further fields.
fn wall(fields: &str) -> String {
    format!(r#"{{"walls": [{{"name": "n", "length": "16'", {fields}}}]}}"#)
}

/// A wall of one storey with these further fields.
fn storey(fields: &str) -> String {
    wall(&format!(
        r#""sections": [{{"stack": [{{"kind": "storey", {fields}}}]}}]"#
    ))
}

fn openings(list: &str) -> String {
    storey(&format!(r#""openings": [{list}]"#))
}

#[expect(clippy::too_many_lines, reason = "one list of values that do not go together")]
#[test]
fn values_that_do_not_go_together_are_named() {
    let door = |name: &str, left: &str, more: &str| {
        format!(
            r#"{{"name": "{name}", "kind": "door", "left": "{left}", "width": "36", "height": "80"{more}}}"#
        )
    };
    let storey_path = |field: &str| format!("/walls/0/sections/0/stack/0{field}");
    let cases = [
        (
            r#"{"walls": [{"name": "n", "length": "8'"}, {"name": "n", "length": "8'"}]}"#.to_owned(),
            Code::DuplicateName,
            "/walls/1/name".to_owned(),
        ),
        (
            openings(&format!("{},{}", door("a", "24", ""), door("b", "48", ""))),
            Code::OpeningsOverlap,
            storey_path("/openings/1"),
        ),
        (
            openings(&format!("{},{}", door("a", "24", ""), door("b", "62", ""))),
            Code::OpeningsTooClose,
            storey_path("/openings/1"),
        ),
        (
            openings(&door("a", "170", r#", "header": null"#)),
            Code::OpeningOffWall,
            storey_path("/openings/0/left"),
        ),
        (
            openings(&door("a", "24", r#", "header": null, "sill": "20""#)),
            Code::OpeningAbovePlate,
            storey_path("/openings/0/height"),
        ),
        (
            openings(&door("a", "24", r#", "header": {"depth": "16"}"#)),
            Code::HeaderAbovePlate,
            storey_path("/openings/0/header"),
        ),
        (
            openings(&door("a", "24", r#", "header": {"y": "70"}"#)),
            Code::HeaderOffOpening,
            storey_path("/openings/0/header"),
        ),
        (
            openings(&door("a", "24", r#", "header": {"to": "17'"}"#)),
            Code::HeaderOffWall,
            storey_path("/openings/0/header"),
        ),
        (
            wall(r#""sections": [{"to": "8'"}, {"from": "9'"}]"#),
            Code::SectionsLeaveGap,
            "/walls/0/sections/1/from".to_owned(),
        ),
        (
            wall(r#""segments": [{"mark": "A", "from": "12'", "to": "17'", "method": "segmented"}]"#),
            Code::SegmentOffWall,
            "/walls/0/segments/0/to".to_owned(),
        ),
        (
            wall(
                r#""segments": [{"storey": "attic", "mark": "A", "from": "0", "to": "4'", "method": "segmented"}]"#,
            ),
            Code::UnknownName,
            "/walls/0/segments/0/storey".to_owned(),
        ),
        (
            wall(
                r#""segments": [{"mark": "A", "from": "0", "to": "4'", "method": "segmented", "field_spacing": "3"}]"#,
            ),
            Code::FieldUnderEdge,
            "/walls/0/segments/0/field_spacing".to_owned(),
        ),
        (
            wall(r#""practice": {"assembly": {"category": "5/8"}}"#),
            Code::NotInStock,
            "/walls/0/practice/assembly/category".to_owned(),
        ),
        (
            wall(r#""practice": {"edge_distance_least": "1"}"#),
            Code::LimitsReversed,
            "/walls/0/practice/edge_distance_least".to_owned(),
        ),
        (
            storey(r#""block_rows": ["0"]"#),
            Code::BlockRowOffStuds,
            storey_path("/block_rows/0"),
        ),
        (
            storey(r#""straps": [{"name": "s", "left": "16'", "bottom": 0, "width": 2, "height": 9}]"#),
            Code::PatchOffWall,
            storey_path("/straps/0"),
        ),
        (
            wall(
                r#""sections": [{"top": {"kind": "rake", "ridge_x": "20'", "peak": 0, "left": {"rise": 1}}}]"#,
            ),
            Code::RidgeOffSection,
            "/walls/0/sections/0/top/ridge_x".to_owned(),
        ),
        (
            wall(
                r#""sections": [{"top": {"kind": "rake", "ridge_x": "16'", "peak": 0, "left": {"rise": 12}}}]"#,
            ),
            Code::RoofTooLow,
            "/walls/0/sections/0/top/peak".to_owned(),
        ),
        (
            wall(r#""measured": {"out_of_plumb": "1/8"}"#),
            Code::MeasuredAlone,
            "/walls/0/measured/plumb_height".to_owned(),
        ),
    ];
    for (text, code, path) in cases {
        assert_eq!(faults(&text).first(), Some(&(code, path)), "{text}");
    }
}

/// Common practice, no source: sheet may hang 2 in. free of its nails, seams keep 16 in. from the plate line under a gable
/// truss and 6 in. from an opening's corner, blocks are cut 1/16 in. short of their bay.
#[test]
fn distances_that_are_not_said_are_those_of_the_trade() {
    let text = r#"{"walls": [{"name": "w", "length": "8'", "sections": [{"bottom": {"bears": "floor"},
        "stack": [{"kind": "storey", "name": "first"}]}]}]}"#;
    let (house, _) = read(text);
    let practice = &house.walls[0].practice;
    let sixteenths = Length::sixteenths;
    assert_eq!(practice.free_edge_most, sixteenths(32));
    assert_eq!(practice.gable_seam_clear, sixteenths(256));
    assert_eq!(practice.corner_clear, sixteenths(96));
    assert_eq!(practice.block_clearance, sixteenths(1));
}

/// Faults are told in the unit that the document is written in: a wall of 2400 mm cannot hold an opening up to 2600 mm, nor
/// is a stud 5 m wide.
#[test]
fn faults_of_a_metric_house_are_told_in_millimetres() {
    let house = |opening: &str, stud: &str| {
        format!(
            r#"{{"unit": "mm", "walls": [{{"name": "w", "length": 2400, "sections": [{{"bottom": {{"bears": "floor"}},
            "stack": [{{"kind": "storey", "stud": {{"width": {stud}, "depth": 89, "length": 2324}},
            "openings": [{{"name": "o", "kind": "window", "left": {opening}, "sill": 900, "width": 900, "height": 1200}}]}}]}}]}}]}}"#
        )
    };
    let told = |text: String| super::read_house(text.as_bytes()).expect_err("a fault");
    let off = told(house("1700", "38"));
    let off = off
        .iter()
        .find(|issue| issue.code == Code::OpeningOffWall)
        .expect("off the wall");
    assert_eq!(
        (off.found.as_str(), off.allowed.as_str()),
        ("1700 mm to 2600 mm", "0 mm to 2400 mm")
    );
    let wide = told(house("700", "5000"));
    assert!(
        wide.iter()
            .all(|issue| issue.allowed.contains("mm") && !issue.allowed.contains('"')),
        "{wide:?}"
    );
}
