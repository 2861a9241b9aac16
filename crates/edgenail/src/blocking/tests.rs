use super::{Blocking, blocking};
use crate::edges::{EdgeRun, edges};
use crate::layout::foreign::foreign;
use crate::layout::lay_out;
use crate::layout::trial::backed;
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
        let after = edges(&house, &backed(&frame, &added), &layout);
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
            let runs = edges(&house, &backed(&frame, added), &layout);
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
        let frame = backed(&frame, &added);
        let bounds: Vec<_> = frame.members.iter().map(|member| member.face.bounds()).collect();
        for (index, one) in bounds.iter().enumerate() {
            for other in bounds.iter().skip(index + 1) {
                prop_assert!(!one.overlaps(other), "{:?} {:?}", one, other);
            }
        }
    }
}
