//! Rows against houses written by hand, and rows with faults.

use super::*;
use crate::issue::Code;
use crate::read_house;

fn row() -> Row<'static> {
    Row {
        name: "back",
        length: 144.0,
        openings: "36, 40, 48, 36",
        ..Row::default()
    }
}

fn faults(row: &Row<'_>) -> Vec<(Code, String)> {
    let error = WallSchedule::new("job", None).add(row).unwrap_err();
    error
        .issues()
        .iter()
        .map(|issue| (issue.code, issue.path.clone()))
        .collect()
}

fn design() -> Design {
    Design {
        edition: Edition::Sdpws2015,
        method: DesignMethod::Asd,
        sharing: Sharing::ReducedStrength,
        high_seismic: false,
        accept_unverified: false,
        level: LoadLevel::Strength,
    }
}

/// The house of a row is the one that a person would write.
#[test]
fn a_row_is_the_house_that_it_describes() {
    let mut schedule = WallSchedule::new("job", Some(design()));
    let front = Row {
        name: "front",
        length: 240.5,
        plate_height: 109.125,
        stud_spacing: 19.2,
        openings: "60,0,3',80; 3048 mm,36,2' 6,40;",
        practice: "Flat Blocked 4/12",
        segments: "0,48; 192 1/2,240 1/2",
        wind: 2150.5,
        seismic: 900.0,
    };
    schedule.add(&front).unwrap();
    schedule.add(&row()).unwrap();
    let by_hand = br#"{
      "name": "job", "unit": "in",
      "walls": [
        {"name": "front", "length": "20' 1/2",
         "practice": {"running": "flat", "blocked_edges": "all", "assembly": {"edge_spacing": 4, "field_spacing": 12}},
         "sections": [{"bottom": {"bears": "concrete"}, "top": {"kind": "flat"}, "stack": [
           {"kind": "storey", "name": "first floor", "spacing": "19.2", "stud": {"length": "104 5/8"},
            "bottom_plates": [{"thickness": "1 1/2", "treated": true}],
            "top_plates": [{"thickness": "1 1/2"}, {"thickness": "1 1/2"}],
            "openings": [
              {"name": "opening 1", "kind": "door", "left": "60", "sill": "0", "width": "36", "height": "80"},
              {"name": "opening 2", "kind": "window", "left": "120", "sill": "36", "width": "30", "height": "40"}]}]}],
         "segments": [
           {"mark": "S1", "method": "segmented", "storey": "first floor", "from": "0", "to": "48"},
           {"mark": "S2", "method": "segmented", "storey": "first floor", "from": "192 1/2", "to": "240 1/2"}]},
        {"name": "back", "length": "12'",
         "sections": [{"bottom": {"bears": "concrete"}, "stack": [
           {"kind": "storey", "name": "first floor", "bottom_plates": [{"treated": true}], "openings": [
              {"name": "opening 1", "kind": "window", "left": "36", "sill": "40", "width": "48", "height": "36"}]}]}]}],
      "demand": {"edition": "2015", "method": "asd", "sharing": "reduced_strength", "high_seismic": false, "loads": [
        {"kind": "wind", "level": "strength", "wall": "front", "storey": "first floor", "amount": 2150.5},
        {"kind": "seismic", "level": "strength", "wall": "front", "storey": "first floor", "amount": 900}]}
    }"#;
    let (by_hand, _) = read_house(by_hand).unwrap();
    let (of_rows, _) = read_house(schedule.house_json().as_bytes()).unwrap();
    assert_eq!(of_rows, by_hand);
}

#[test]
fn faults_stand_at_the_fields_of_the_row() {
    let of = |change: fn(&mut Row<'static>)| {
        let mut row = row();
        change(&mut row);
        faults(&row)
    };
    let one = |code, path: &str| vec![(code, path.to_owned())];
    assert_eq!(of(|row| row.name = ""), one(Code::EmptyText, "/name"));
    assert_eq!(of(|row| row.length = f64::NAN), one(Code::NotALength, "/length"));
    assert_eq!(of(|row| row.length = -144.0), one(Code::OutOfRange, "/length"));
    assert_eq!(
        of(|row| row.plate_height = f64::INFINITY),
        one(Code::OutOfRange, "/plate_height")
    );
    assert_eq!(
        of(|row| row.plate_height = 4.5),
        one(Code::OutOfRange, "/plate_height")
    );
    assert_eq!(
        of(|row| row.plate_height = 5.0),
        one(Code::OutOfRange, "/plate_height")
    );
    assert_eq!(
        of(|row| row.stud_spacing = 0.0),
        one(Code::OutOfRange, "/stud_spacing")
    );
    assert_eq!(
        of(|row| row.openings = "36,40,48"),
        one(Code::TooFewItems, "/openings/0")
    );
    assert_eq!(
        of(|row| row.openings = "36,40,48,36;;"),
        one(Code::TooFewItems, "/openings/1")
    );
    assert_eq!(
        of(|row| row.openings = "36,40,48,36,2"),
        one(Code::TooManyItems, "/openings/0")
    );
    assert_eq!(
        of(|row| row.openings = "36,40,wide,36"),
        one(Code::NotALength, "/openings/0/width")
    );
    let off = of(|row| row.openings = "36,40,480,36");
    assert!(
        off.contains(&(Code::OpeningOffWall, "/openings/0/left".to_owned())),
        "{off:?}"
    );
    assert_eq!(
        of(|row| row.practice = "sideways"),
        one(Code::NotAChoice, "/practice")
    );
    assert_eq!(
        of(|row| row.practice = "flat 4/12/2"),
        one(Code::NotAChoice, "/practice")
    );
    assert_eq!(
        of(|row| row.practice = "flat 0/12"),
        one(Code::OutOfRange, "/practice/assembly/edge_spacing")
    );
    assert_eq!(
        of(|row| row.segments = "0,48,2"),
        one(Code::TooManyItems, "/segments/0")
    );
    assert_eq!(
        of(|row| row.segments = "100,200"),
        one(Code::SegmentOffWall, "/segments/0/to")
    );
    assert_eq!(of(|row| row.wind = 10.0), one(Code::MissingField, "/wind"));
}

#[test]
fn loads_are_refused_at_their_own_field() {
    for (wind, seismic, path) in [
        (f64::NAN, 0.0, "/wind"),
        (0.0, -1.0, "/seismic"),
        (1.0, 1e9, "/seismic"),
        (1e9, 1.0, "/wind"),
    ] {
        let row = Row {
            wind,
            seismic,
            segments: "0,36",
            ..row()
        };
        let error = WallSchedule::new("job", Some(design())).add(&row).unwrap_err();
        assert_eq!(error.issues()[0].path, path, "{error}");
        assert_eq!(error.issues()[0].wall, "back");
    }
}

#[test]
fn a_row_with_a_fault_leaves_the_schedule_as_it_was() {
    let mut schedule = WallSchedule::new("job", None);
    schedule.add(&row()).unwrap();
    let before = schedule.clone();
    let error = schedule.add(&row()).unwrap_err();
    assert_eq!(error.issues()[0].code, Code::DuplicateName);
    assert_eq!((schedule.len(), schedule), (1, before));
}

#[test]
fn every_preset_is_read_and_says_where_it_comes_from() {
    for preset in presets().unwrap() {
        assert!(!preset.meaning.is_empty() && !preset.source.is_empty());
        let spaced = preset.name.replace('_', " ");
        let written = format!("{} 3/12", spaced.to_uppercase());
        for practice in [&preset.name, &spaced, &written] {
            let mut schedule = WallSchedule::new("job", None);
            schedule.add(&Row { practice, ..row() }).unwrap();
            let said = &schedule.rows[0].wall["practice"];
            for (field, value) in &preset.practice {
                assert_eq!(&said[field], value);
            }
            assert_eq!(said["assembly"]["edge_spacing"] == "3", practice == &written);
        }
    }
}

#[test]
fn a_schedule_without_rows_has_no_plan() {
    let schedule = WallSchedule::new("job", None);
    assert!(schedule.is_empty());
    assert_eq!(schedule.plan().unwrap_err().issues()[0].code, Code::TooFewItems);
}
