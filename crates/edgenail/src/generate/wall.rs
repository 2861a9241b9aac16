//! One generated wall. Sizes are counted in eighths of an inch.

use super::Mix;
use super::random::Random;
use serde_json::{Value, json};

/// Eighths as text that reads back exactly.
fn eighths(count: i64) -> String {
    let sign = if count < 0 { "-" } else { "" };
    let (whole, rest) = (count.abs() / 8, count.abs() % 8);
    if rest == 0 {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole} {rest}/8")
    }
}

pub(super) fn wall(random: &mut Random, mix: &mut Mix, name: &str) -> Value {
    let spacing = ["16", "16", "24", "12", "19.2"][random.below(5)];
    mix.spacing_19_2 |= spacing == "19.2";
    let length = if random.percent(60) {
        random.between(2, 9) * 48 * 8
    } else {
        mix.off_layout = true;
        random.between(8 * 96, 8 * 430)
    };
    let stud = [92 * 8 + 5, 104 * 8 + 5, 116 * 8 + 5][random.below(3)];
    let two_storeys = random.percent(35);
    let concrete = random.percent(60);
    let treated = concrete || random.percent(10);
    let mut openings = 0;
    let mut stack = vec![storey(
        random,
        mix,
        "first",
        length,
        stud,
        spacing,
        treated,
        &mut openings,
    )];
    if two_storeys {
        stack.push(band(random, mix));
        stack.push(storey(
            random,
            mix,
            "second",
            length,
            stud,
            spacing,
            false,
            &mut openings,
        ));
    }
    mix.several_openings |= openings >= 2;
    let mut bottom = json!({"bears": if concrete { "concrete" } else { "floor" }});
    if random.percent(15) {
        mix.held_up = true;
        bottom["reach"] = json!("-1/2");
    }
    let top = top(random, mix, length);
    json!({
        "name": name,
        "length": eighths(length),
        "sections": [{"bottom": bottom, "stack": stack, "top": top}],
    })
}

#[expect(clippy::too_many_arguments, reason = "a storey is made of many choices")]
fn storey(
    random: &mut Random,
    mix: &mut Mix,
    name: &str,
    length: i64,
    stud: i64,
    spacing: &str,
    treated: bool,
    count: &mut i64,
) -> Value {
    let mut openings: Vec<Value> = Vec::new();
    // Room for an end stud, a king and a trimmer before the first opening, for two kings and trimmers between.
    let (end, side) = (8 * 5, 8 * 7);
    let mut at = end + random.between(0, 8 * 60);
    while openings.len() < 4 && random.percent(75) {
        let door = random.percent(25);
        let width = random.between(8 * 20, 8 * 76);
        if at + width + end > length {
            break;
        }
        let (sill, height) = if door {
            (0, random.between(8 * 80, 8 * 83))
        } else {
            (random.between(8 * 18, 8 * 42), random.between(8 * 24, 8 * 40))
        };
        openings.push(json!({
            "name": format!("{name} {}", openings.len() + 1),
            "kind": if door { "door" } else { "window" },
            "left": eighths(at), "sill": eighths(sill), "width": eighths(width), "height": eighths(height),
            "header": {"depth": "5 1/2"},
        }));
        let close = random.percent(20);
        let gap = if close {
            side
        } else {
            random.between(side + 8 * 20, 8 * 120)
        };
        at += width + gap;
        if close && at + 8 * 20 + end <= length && openings.len() < 4 {
            mix.close_openings = true;
            openings.push(json!({
                "name": format!("{name} {}", openings.len() + 1),
                "kind": "window",
                "left": eighths(at), "sill": "30", "width": "20", "height": "30",
                "header": {"depth": "5 1/2"},
            }));
            at += 8 * 20 + side + random.between(8 * 20, 8 * 90);
        }
    }
    *count += i64::try_from(openings.len()).unwrap_or(0);
    json!({
        "kind": "storey", "name": name,
        "bottom_plates": [{"thickness": "1 1/2", "treated": treated}],
        "stud": {"width": "1 1/2", "depth": "5 1/2", "length": eighths(stud)},
        "spacing": spacing,
        "origin": {"end": if random.percent(70) { "left" } else { "right" }, "offset": "0"},
        "openings": openings,
    })
}

fn band(random: &mut Random, mix: &mut Mix) -> Value {
    let member = ["sawn_joist", "i_joist", "truss"][random.below(3)];
    let spacing = ["16", "19.2", "24"][random.below(3)];
    mix.spacing_19_2 |= spacing == "19.2";
    let mut members = json!({
        "kind": "members", "direction": if random.percent(60) { "across" } else { "along" }, "member": member,
        "width": if member == "sawn_joist" { "1 1/2" } else { "2 1/2" }, "depth": "11 7/8", "spacing": spacing,
    });
    if random.percent(50) {
        members["rim"] =
            json!({"kind": if member == "sawn_joist" { "sawn" } else { "engineered" }, "thickness": "1 1/8"});
    } else {
        mix.band_without_rim = true;
        members["blocking_between"] = json!(random.percent(30));
    }
    json!({"kind": "floor_band", "name": "band", "layers": [members, {"kind": "subfloor", "thickness": "3/4"}]})
}

fn top(random: &mut Random, mix: &mut Mix, length: i64) -> Value {
    let rise = random.between(2, 9);
    let pitch = json!({"rise": rise.to_string(), "run": "12"});
    match random.below(10) {
        0 => {
            mix.sloped_top = true;
            // A single slope falling to the right, no lower than a flat wall at its end.
            json!({"kind": "rake", "ridge_x": "0", "peak": eighths(length * rise / 12 + 8), "left": pitch, "right": pitch,
                   "build": if random.percent(60) { "raked_plates" } else { "ladder" }})
        }
        1 | 2 => {
            mix.sloped_top = true;
            json!({"kind": "gable_truss", "ridge_x": eighths(length / 2), "heel": "5", "pitch": pitch, "chord": "3 1/2",
                   "web_width": "1 1/2", "web_spacing": "24", "sheathed": random.percent(70), "hold_up": "1"})
        }
        3 => {
            json!({"kind": "eave_trusses", "spacing": "24", "width": "1 1/2", "heel": "11", "blocked": true, "vent_space": "3"})
        }
        _ => json!({"kind": "flat"}),
    }
}
