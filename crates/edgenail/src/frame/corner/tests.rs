use crate::frame::{EndCondition, Frame, MemberKind, frame_wall};
use crate::house::House;
use crate::length::{Length, Unit};
use crate::reading::read_house;

/// Two walls that meet at the left end of each: `long` runs through, `short` butts. Their plates differ.
fn corner(turn: &str) -> House {
    let wall = |name: &str, depth: &str, plates: &str| {
        format!(
            r#"{{"name": "{name}", "length": "12'", "sections": [{{"bottom": {{"bears": "floor"}},
            "stack": [{{"kind": "storey", "name": "first", "top_plates": {plates},
            "stud": {{"width": "1 1/2", "depth": "{depth}", "length": "92 5/8"}}}}]}}]}}"#
        )
    };
    let (one, two) = (
        r#"[{"thickness": "1 1/2"}]"#,
        r#"[{"thickness": "1 1/2"}, {"thickness": "1 1/2"}]"#,
    );
    let text = format!(
        r#"{{"walls": [{}, {}], "corners": [{{"turn": "{turn}",
        "through": {{"wall": "long", "end": "left"}}, "butting": {{"wall": "short", "end": "left"}}}}]}}"#,
        wall("long", "5 1/2", one),
        wall("short", "3 1/2", two)
    );
    read_house(text.as_bytes()).expect("the corner is sound").0
}

fn framed(turn: &str) -> [Frame; 2] {
    let house = corner(turn);
    [0, 1].map(|wall| frame_wall(&house, wall).expect("the wall has a frame"))
}

fn length(text: &str) -> Length {
    Length::parse(text, Unit::Inch).expect("a length").length
}

/// Common practice, no source: the butting wall's sheets lap the neighbour's end stud and its sheathing.
#[test]
fn at_an_outside_corner_the_butting_wall_laps_past_the_through_wall() {
    let [long, short] = framed("outside");
    assert_eq!(long.left, EndCondition::Through);
    assert_eq!(long.lower.span().lo, Length::ZERO);
    assert_eq!(
        short.left,
        EndCondition::Laps {
            by: length("5 15/16")
        }
    );
    assert_eq!(short.lower.span().lo, -length("5 15/16"));
}

/// US Navy, Builder 3 & 2 (NAVEDTRA 14044), p. 1-23: the first stud is marked 15 1/4 in. from the corner; here the
/// corner of the sheathing, so that the first sheet breaks on a stud (common practice, no source).
#[test]
fn layout_is_pulled_from_the_sheathing_corner() {
    let [_, short] = framed("outside");
    let first = short
        .members
        .iter()
        .filter(|member| member.kind == MemberKind::Stud)
        .map(|member| member.face.bounds().x0)
        .min();
    assert_eq!(first, Some(length("15 1/4") - length("5 15/16")));
}

/// By arithmetic: what the sheets of the butting wall lap is the neighbour's stud between the neighbour's own plates.
#[test]
fn the_neighbour_stands_in_the_butting_wall_with_its_own_plates() {
    let [_, short] = framed("outside");
    let of = |kind: MemberKind| {
        let faces = short.members.iter().filter(move |member| member.kind == kind);
        faces.map(|member| member.face.bounds()).collect::<Vec<_>>()
    };
    let studs = of(MemberKind::NeighbourStud);
    assert_eq!(studs.len(), 1);
    assert_eq!((studs[0].x0, studs[0].x1), (-length("5 1/2"), Length::ZERO));
    let tops: Vec<Length> = of(MemberKind::NeighbourPlate)
        .iter()
        .map(|face| face.y1)
        .collect();
    assert_eq!(tops, [length("1 1/2"), length("95 5/8")]);
}

/// Common practice, no source: at an inside corner the butting frame stands against the through wall, whose sheets end
/// at it; the butting wall's sheets end at those.
#[test]
fn at_an_inside_corner_nothing_is_sheathed_that_the_other_wall_covers() {
    let [long, short] = framed("inside");
    assert_eq!(long.lower.span().lo, length("3 1/2"));
    assert_eq!(short.lower.span().lo, length("7/16"));
}
