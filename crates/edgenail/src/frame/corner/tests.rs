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

/// A wall of two storeys on studs of these lengths, a floor of 12 in. between them.
fn two_storeys(name: &str, studs: [&str; 2]) -> String {
    let storey = |name: &str, stud: &str| {
        format!(
            r#"{{"kind": "storey", "name": "{name}", "stud": {{"width": "1 1/2", "depth": "3 1/2", "length": "{stud}"}}}}"#
        )
    };
    format!(
        r#"{{"name": "{name}", "length": "12'", "sections": [{{"bottom": {{"bears": "floor"}}, "stack": [{},
        {{"kind": "floor_band", "name": "second floor", "layers": [{{"kind": "members", "direction": "across",
        "member": "sawn_joist", "width": "1 1/2", "depth": "12", "rim": {{"kind": "sawn", "thickness": "1 1/2"}}}}]}},
        {}]}}]}}"#,
        storey("first", studs[0]),
        storey("second", studs[1])
    )
}

/// By arithmetic on plates and studs: three plates of 1 1/2 in. make 97 1/8 in. of 92 5/8 and 109 1/8 in. of 104 5/8. Where
/// the neighbour's first storey is the taller one it stands in the way of this wall's floor, and its own floor lies above
/// it; where it is the lower one, its second storey does.
#[test]
fn a_neighbour_of_another_height_keeps_its_own_heights() {
    for (ours, theirs, stud, floor) in [
        ("92 5/8", "104 5/8", ("1 1/2", "106 1/8"), ("109 1/8", "121 1/8")),
        ("104 5/8", "92 5/8", ("1 1/2", "94 1/8"), ("97 1/8", "109 1/8")),
    ] {
        let text = format!(
            r#"{{"walls": [{}, {}], "corners": [{{"turn": "outside",
            "through": {{"wall": "long", "end": "left"}}, "butting": {{"wall": "short", "end": "left"}}}}]}}"#,
            two_storeys("long", [theirs, "92 5/8"]),
            two_storeys("short", [ours, "92 5/8"])
        );
        let house = read_house(text.as_bytes()).expect("the corner is sound").0;
        let frame = frame_wall(&house, 1).expect("the wall has a frame");
        let beside = |kind: MemberKind| {
            let own = frame.members.iter().filter(move |member| member.kind == kind);
            own.map(|member| member.face.bounds()).collect::<Vec<_>>()
        };
        let first = beside(MemberKind::NeighbourStud)[0];
        assert_eq!((first.y0, first.y1), (length(stud.0), length(stud.1)));
        let rims = beside(MemberKind::NeighbourPlate);
        let rim = rims.iter().find(|face| face.height() == length("12"));
        assert_eq!(
            rim.map(|face| (face.y0, face.y1)),
            Some((length(floor.0), length(floor.1)))
        );
        assert!(beside(MemberKind::Rim).iter().all(|face| face.x0 == Length::ZERO));
        apart(&frame);
    }
}

/// Nothing of a neighbour stands where other wood is.
fn apart(frame: &Frame) {
    let next = |kind: MemberKind| matches!(kind, MemberKind::NeighbourStud | MemberKind::NeighbourPlate);
    for member in frame.members.iter().filter(|member| next(member.kind)) {
        let face = member.face.bounds();
        let other = frame
            .members
            .iter()
            .find(|other| other.id != member.id && other.face.bounds().overlaps(&face));
        assert!(other.is_none(), "{member:?} stands in {other:?}");
    }
}

/// Two pieces of wood are not in one place: on generated corners.
#[test]
fn no_neighbour_stands_in_other_wood() {
    let mut unlike = 0;
    for seed in 0..400 {
        let (text, mix) = crate::generate::house_json(seed);
        if !mix.butting_corner {
            continue;
        }
        let house = read_house(text.as_bytes()).expect("a generated house is sound").0;
        for wall in 0..house.walls.len() {
            apart(&frame_wall(&house, wall).expect("a generated wall has a frame"));
        }
        let heights = |wall: usize| {
            let levels = house.walls[wall].sections[0].stack.iter();
            levels.map(crate::house::Level::height).collect::<Vec<_>>()
        };
        unlike += u32::from(heights(0) != heights(1));
    }
    assert!(unlike >= 20, "{unlike} corners of unlike heights");
}
