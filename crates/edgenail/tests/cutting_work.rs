//! Saw work of a piece against its outline.

mod cut_ground;

use cut_ground::{Face, HEIGHT, WIDTH, any_face, house, inch, sheet};
use edgenail::cutting::{CutWork, Notch, NotchCut, cuts_of_blank, cuts_of_piece, notches};
use edgenail::geometry::{Point, Rect};
use edgenail::layout::Running;
use edgenail::{Amount, Length};
use proptest::prelude::*;

fn running() -> impl Strategy<Value = Running> {
    prop_oneof![Just(Running::Upright), Just(Running::Flat)]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// A rake cut for each slope of the outline; an opening for each notch without a corner of the blank, cut along
    /// the edges that it has inside the blank.
    #[test]
    fn work_is_read_off_the_outline(face in any_face(), running in running()) {
        for outline in face.outlines() {
            let work = cuts_of_piece(&outline, &sheet(inch(WIDTH), inch(HEIGHT)), running);
            let rings = outline.rings();
            let steps = rings.iter().flat_map(|ring| (0..ring.len()).map(move |i| (ring[i], ring[(i + 1) % ring.len()])));
            let slopes = steps.filter(|(a, b)| a.x != b.x && a.y != b.y).count();
            prop_assert_eq!(usize::try_from(work.rake_cuts), Ok(slopes));
            let blank = outline.bounds();
            let found = notches(&outline);
            let (bench, in_place): (Vec<Notch>, Vec<Notch>) = found.into_iter().partition(|notch| notch.cut == NotchCut::Bench);
            prop_assert_eq!(usize::try_from(work.notches), Ok(bench.len()));
            prop_assert_eq!(usize::try_from(work.openings), Ok(in_place.len()));
            let mut edge = Length::ZERO;
            for r in in_place.iter().map(|notch| notch.rect) {
                for (side, length) in [
                    (r.x0 == blank.x0, r.height()),
                    (r.x1 == blank.x1, r.height()),
                    (r.y0 == blank.y0, r.width()),
                    (r.y1 == blank.y1, r.width()),
                ] {
                    edge += if side { Length::ZERO } else { length };
                }
            }
            prop_assert_eq!(work.opening_edge, edge);
        }
    }

    /// A cut for each direction in which the blank is smaller than the sheet, and none where it is as large.
    #[test]
    fn a_blank_is_cut_where_it_is_smaller(width in 46_i64..=48, length in 94_i64..=96, running in running()) {
        let (across, up) = if running == Running::Flat { (length, width) } else { (width, length) };
        let blank = Rect::from_size(inch(7), inch(-3), inch(across), inch(up));
        let work = cuts_of_blank(&blank, &sheet(inch(48), inch(96)), running);
        let wanted = CutWork { rips: u32::from(width != 48), cross_cuts: u32::from(length != 96), ..CutWork::default() };
        prop_assert_eq!(work, wanted);
    }

    /// Minutes are within half of the smallest amount of edge × rate, over and not under where both are as near.
    #[test]
    fn edge_minutes_are_rounded_once(rate in 0_i64..60_000, sixteenths in 0_i64..5_000) {
        let mut rates = house().rates;
        rates.opening_per_foot = Amount::from_ten_thousandths(rate);
        let work = CutWork { opening_edge: Length::sixteenths(sixteenths), ..CutWork::default() };
        // In 16ths of an inch a foot is 192.
        let over = 192 * work.edge_minutes(&rates).ten_thousandths() - rate * sixteenths;
        prop_assert!(-96 < over && over <= 96, "{over}");
    }
}

/// A window of 24 × 30 in. inside a panel, counted by hand: 108 in. of edge; where the panel ends at its sill, 84 in.
#[test]
fn a_window_in_a_panel() {
    let face = |bottom| Face {
        lower: vec![(-4, 0), (WIDTH + 4, 0)],
        upper: vec![(-4, HEIGHT), (WIDTH + 4, HEIGHT)],
        holes: vec![Rect::from_size(inch(12), inch(bottom), inch(24), inch(30))],
        corner: Point::default(),
        shrunk: Length::ZERO,
    };
    let work = |bottom| {
        cuts_of_piece(
            &face(bottom).outlines()[0],
            &sheet(inch(48), inch(96)),
            Running::Upright,
        )
    };
    let opening = |edge| CutWork {
        openings: 1,
        opening_edge: inch(edge),
        ..CutWork::default()
    };
    assert_eq!(work(30), opening(108));
    assert_eq!(work(0), opening(84));
}
