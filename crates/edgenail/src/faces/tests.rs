//! Joints of both faces, SDPWS 2015 4.3.7.1 (from memory, not checked against print).

use crate::finding::FindingCode;
use crate::{Plan, plan_json};
use proptest::prelude::*;
use serde_json::{Value, json};

/// A wall of 16 ft with studs at 16 in., 4 ft sheets from plate to plate with these seams.
fn face(name: &str, seams: &[i64], spacing: &str) -> Value {
    json!({
        "name": name, "length": "192",
        "sections": [{"bottom": {"bears": "floor"}, "stack": [{"kind": "storey"}]}],
        "segments": [{"mark": "S", "from": "0", "to": "192", "method": "segmented", "edge_spacing": spacing}],
        "given_layout": {"kind": "bands", "bands": [
            {"bottom": "0", "top": "97 1/8", "running": "upright", "sheet": "long", "seams": seams},
        ]},
    })
}

fn house(faces: &[Value; 2]) -> Plan {
    let stock =
        json!({"sheets": [{"name": "long", "width": "47 7/8", "length": "97 1/8", "category": "7/16"}]});
    let text = json!({"walls": faces, "stock": stock}).to_string();
    plan_json(&text).unwrap_or_else(|error| panic!("{error}"))
}

fn other_face(mut wall: Value, of: &str) -> Value {
    wall["other_face"] = of.into();
    wall
}

fn count(plan: &Plan, code: FindingCode) -> usize {
    plan.findings()
        .iter()
        .filter(|finding| finding.code == code)
        .count()
}

const SHEETS: [i64; 3] = [48, 96, 144];
/// The same sheets begun with a third of one.
const OFFSET: [i64; 4] = [16, 64, 112, 160];

#[test]
fn joints_of_both_faces_on_one_stud_are_told_where_nails_stand_under_6_in_apart() {
    let plan = house(&[
        face("out", &SHEETS, "4"),
        other_face(face("in", &SHEETS, "6"), "out"),
    ]);
    let told: Vec<_> = plan
        .findings()
        .iter()
        .filter(|f| f.code == FindingCode::JointsOfBothFaces)
        .collect();
    assert_eq!(told.len(), 3);
    let style = plan.house().drawn_in.in_text();
    assert!(
        told.iter()
            .all(|finding| finding.wall == "in" && finding.allowed.written(style).contains("2 1/2"))
    );
}

#[test]
fn nothing_is_told_of_6_in_of_offset_joints_or_of_one_face() {
    let code = FindingCode::JointsOfBothFaces;
    let wide = house(&[
        face("out", &SHEETS, "6"),
        other_face(face("in", &SHEETS, "6"), "out"),
    ]);
    assert_eq!(count(&wide, code), 0);
    let offset = house(&[
        face("out", &SHEETS, "4"),
        other_face(face("in", &OFFSET, "4"), "out"),
    ]);
    assert_eq!(count(&offset, code), 0);
    let strangers = house(&[face("out", &SHEETS, "4"), face("in", &SHEETS, "4")]);
    assert_eq!(count(&strangers, code), 0);
}

#[test]
fn a_second_stud_beside_the_joint_serves_both_faces() {
    let mut asked = face("out", &SHEETS, "4");
    asked["segments"][0]["seam_member_width"] = "2 1/2".into();
    let plan = house(&[asked, other_face(face("in", &SHEETS, "4"), "out")]);
    assert_eq!(count(&plan, FindingCode::JointsOfBothFaces), 0);
}

#[test]
fn unlike_frames_are_told() {
    let mut other = face("in", &SHEETS, "6");
    other["sections"][0]["stack"][0]["spacing"] = "24".into();
    let plan = house(&[face("out", &SHEETS, "6"), other_face(other, "out")]);
    assert_eq!(count(&plan, FindingCode::FacesUnlike), 1);
    let alike = house(&[
        face("out", &SHEETS, "6"),
        other_face(face("in", &SHEETS, "6"), "out"),
    ]);
    assert_eq!(count(&alike, FindingCode::FacesUnlike), 0);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]
    /// So many joints are told as there are studs that both faces break on, seen through the wall.
    #[test]
    fn each_stud_that_both_faces_break_on_is_told_once(from in 1_i64..3, other in 1_i64..3) {
        let seams = |first: i64| (0..4).map(|k| 16 * first + 48 * k).filter(|x| *x < 192).collect::<Vec<i64>>();
        let (ours, theirs) = (seams(from), seams(other));
        let both = theirs.iter().filter(|x| ours.contains(&(192 - **x))).count();
        let plan = house(&[face("out", &ours, "4"), other_face(face("in", &theirs, "4"), "out")]);
        prop_assert_eq!(count(&plan, FindingCode::JointsOfBothFaces), both);
    }
}
