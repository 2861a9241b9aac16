//! Corners join two ends of two walls, each end once.

use super::Place;
use crate::house::{House, WallEnd};
use crate::issue::Code;

pub(super) fn check(place: &Place<'_>, house: &House) {
    let mut known: Vec<&str> = house.walls.iter().map(|wall| wall.name.as_str()).collect();
    known.sort_unstable();
    let mut taken: Vec<(&str, bool, usize)> = Vec::new();
    for (index, corner) in house.corners.iter().enumerate() {
        let path = format!("/corners/{index}");
        if !place.sound(&path) {
            continue;
        }
        for (field, end) in [("through", &corner.through), ("butting", &corner.butting)] {
            if known.binary_search(&end.wall.as_str()).is_err() {
                place.fault(
                    &format!("{path}/{field}/wall"),
                    Code::UnknownName,
                    &end.wall,
                    "the name of a wall",
                );
            }
            taken.push((&end.wall, end.end == crate::house::End::Right, index));
        }
        if corner.through.wall == corner.butting.wall {
            place.fault(&path, Code::CornerOfOneWall, &corner.through.wall, "two walls");
        }
    }
    taken.sort_unstable();
    taken.dedup();
    for pair in taken.windows(2) {
        let [(wall, end, first), (other, other_end, second)] = pair else {
            continue;
        };
        if (wall, end) != (other, other_end) {
            continue;
        }
        let path = format!("/corners/{second}");
        let both = [house.corners.get(*first), house.corners.get(*second)];
        if let [Some(first), Some(second)] = both
            && same(&first.through, &second.butting)
            && same(&first.butting, &second.through)
        {
            place.fault(
                &path,
                Code::CornersDisagree,
                format!("`{wall}` runs through and butts"),
                "one corner for two wall ends",
            );
        } else {
            place.fault(&path, Code::CornerEndTaken, *wall, "each wall end at one corner");
        }
    }
}

fn same(a: &WallEnd, b: &WallEnd) -> bool {
    a == b
}
