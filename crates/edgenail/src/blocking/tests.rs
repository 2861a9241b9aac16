use super::{Blocking, blocking};
use crate::edges::{EdgeRun, edges};
use crate::layout::foreign::foreign;
use crate::layout::lay_out;
use proptest::prelude::*;

/// A run overlaps one that is listed as impossible to back.
fn is_listed(run: &EdgeRun, before: &[EdgeRun], added: &Blocking) -> bool {
    added.impossible.iter().any(|impossible| {
        let listed = &before[impossible.run as usize];
        let meets = listed.from <= run.to && run.from <= listed.to;
        (listed.piece, listed.edge) == (run.piece, run.edge) && meets
    })
}

proptest! {
    #[test]
    fn everything_that_wants_backing_has_it_or_is_listed((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let layout = lay_out(&house, &frame, &spec);
        let before = edges(&house, &frame, &layout);
        let added = blocking(&house, &frame, &layout, &before);
        let after = edges(&house, &frame.with(&added), &layout);
        for run in after.iter().filter(|run| run.lacks_backing()) {
            prop_assert!(is_listed(run, &before, &added), "{:?}\n{:?}", run, added);
        }
    }

    #[test]
    fn no_block_can_be_left_out((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let layout = lay_out(&house, &frame, &spec);
        let before = edges(&house, &frame, &layout);
        let added = blocking(&house, &frame, &layout, &before);
        let bare = |added: &Blocking| {
            let runs = edges(&house, &frame.with(added), &layout);
            runs.iter().filter(|run| run.lacks_backing()).map(|run| run.length).sum::<crate::Length>()
        };
        let all = bare(&added);
        for left_out in 0..added.blocks.len() {
            let mut fewer = added.clone();
            let block = fewer.blocks.remove(left_out);
            prop_assert!(!block.serves.is_empty(), "{:?}", block);
            prop_assert!(bare(&fewer) > all, "{:?}", block);
        }
        for stud in &added.studs {
            prop_assert!(!stud.serves.is_empty(), "{:?}", stud);
        }
    }

    #[test]
    fn what_is_added_stands_clear_of_what_stands((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let layout = lay_out(&house, &frame, &spec);
        let added = blocking(&house, &frame, &layout, &edges(&house, &frame, &layout));
        let given = frame.members.len();
        let frame = frame.with(&added);
        for (index, one) in frame.members.iter().enumerate() {
            for other in frame.members.iter().skip(given.max(index + 1)) {
                let (rect, face) = (other.face.bounds(), &one.face);
                let inner = rect.grown(-crate::Length::from_units(2));
                let meets = match face.is_rect() {
                    Some(face) => rect.overlaps(&face),
                    None => inner.corners().into_iter().any(|corner| face.contains(corner)),
                };
                prop_assert!(!meets, "{:?} {:?}", one, rect);
            }
        }
    }
}
