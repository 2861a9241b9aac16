//! Two walls that are the faces of one frame name each other and are of one length.

use super::Place;
use crate::house::House;
use crate::issue::Code;
use std::collections::HashMap;

/// Every pair of faces, where the names of all walls are known.
pub(super) fn check(place: &Place<'_>, house: &House) {
    let known: HashMap<&str, usize> = (0..)
        .zip(&house.walls)
        .map(|(at, wall)| (wall.name.as_str(), at))
        .collect();
    let mut named: HashMap<&str, &str> = HashMap::new();
    for (index, wall) in house.walls.iter().enumerate() {
        let field = format!("/walls/{index}/other_face");
        let Some(name) = wall.other_face.as_deref().filter(|_| place.sound(&field)) else {
            continue;
        };
        let Some((at, other)) = known.get(name).and_then(|at| Some((*at, house.walls.get(*at)?))) else {
            place.fault(&field, Code::UnknownName, name, "the name of a wall");
            continue;
        };
        if at == index {
            place.fault(&field, Code::FacesDisagree, name, "another wall");
            continue;
        }
        let first = *named.entry(name).or_insert(&wall.name);
        let other_names = other.other_face.as_deref().unwrap_or(&wall.name);
        if other_names != wall.name {
            let found = format!("`{name}` names `{other_names}`");
            place.fault(
                &field,
                Code::FacesDisagree,
                found,
                "two walls that name each other",
            );
        } else if first != wall.name {
            let found = format!("`{name}` is the other face of `{first}`");
            place.fault(&field, Code::FacesDisagree, found, "two faces of one frame");
        }
        let sound = |at: usize| place.sound(&format!("/walls/{at}/length"));
        if sound(index) && sound(at) && other.length != wall.length {
            place.fault(&field, Code::FacesDisagree, other.length, wall.length);
        }
    }
}
