//! A house before its sheets is what its plan begins with.

#![expect(clippy::unwrap_used, reason = "a test fails by a panic")]

use edgenail::generate::house_json;
use edgenail::plan::Framed;
use edgenail::{demo, plan_bytes};
use serde_json::Value;

fn agrees(text: &str) {
    let framed = Framed::read(text.as_bytes()).unwrap();
    let plan = plan_bytes(text.as_bytes()).unwrap();
    assert_eq!(framed.house(), plan.house());
    assert_eq!(framed.assumed(), plan.assumed());
    for (frame, wall) in framed.frames().iter().zip(plan.walls()) {
        assert_eq!(format!("{frame:?}"), format!("{:?}", wall.frame));
    }
    let members: usize = framed.frames().iter().map(|frame| frame.members.len()).sum();
    assert_eq!(framed.members().len(), members);
    // What it understood can be read again.
    let document: Value = serde_json::from_str(&framed.json()).unwrap();
    let again = Framed::read(document["house"].to_string().as_bytes()).unwrap();
    assert_eq!(again.json(), framed.json());
    assert_eq!(document["members"]["rows"].as_array().unwrap().len(), members);
}

#[test]
fn a_house_is_framed_as_its_plan_frames_it() {
    agrees(demo::HOUSE_JSON);
    for seed in 0..6 {
        agrees(&house_json(seed).0);
    }
    // A demand that chooses the nailing of a segment, which decides the width of members at its seams.
    agrees(
        r#"{"walls": [{"name": "w", "length": "24'", "segments": [
            {"from": "0", "to": "8'", "mark": "A", "method": "segmented"}, {"from": "16'", "to": "24'", "mark": "B", "method": "segmented"}]}],
        "demand": {"edition": "2015", "method": "asd", "high_seismic": false, "sharing": "reduced_strength", "schedule": "cheapest",
            "accept_unverified": true, "loads": [
            {"kind": "wind", "level": "strength", "wall": "w", "storey": "first floor", "amount": 9000}]}}"#,
    );
}
