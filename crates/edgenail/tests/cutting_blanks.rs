//! Blanks of a house, and what falls out of them.

mod cut_ground;

use cut_ground::{Face, HEIGHT, WIDTH, house, inch, layout};
use edgenail::Length;
use edgenail::cutting::{Drop, blanks};
use edgenail::geometry::{Point, Rect};
use edgenail::layout::Running;
use proptest::prelude::*;

/// A panel of 48 × 96 in. with one hole, which may reach over its edges.
fn holed(left: i64, bottom: i64, width: i64, height: i64) -> Face {
    Face {
        lower: vec![(-4, 0), (WIDTH + 4, 0)],
        upper: vec![(-4, HEIGHT), (WIDTH + 4, HEIGHT)],
        holes: vec![Rect::from_size(
            inch(left),
            inch(bottom),
            inch(width),
            inch(height),
        )],
        corner: Point::new(inch(100), inch(-11)),
        shrunk: Length::ZERO,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// A hole gives what of it lies in the panel, less a kerf at each side that is cut, if that is worth keeping.
    /// Holes from side to side part a panel or make its blank smaller; there are none here.
    #[test]
    fn what_falls_out_is_the_hole_less_its_kerfs(
        (left, bottom) in (-8_i64..44, -8_i64..90),
        (width, height) in (4_i64..40, 4_i64..80),
        kerf in 0_i64..4,
        flat in any::<bool>(),
    ) {
        let (right, top) = (left + width, bottom + height);
        prop_assume!((left > 0 || right < WIDTH) && (bottom > 0 || top < HEIGHT));
        let mut house = house();
        let kerf = Length::sixteenths(kerf);
        let practice = &mut house.walls[0].practice;
        practice.kerf = kerf;
        (practice.offcut_width_least, practice.offcut_length_least) = (inch(16), inch(24));
        let running = if flat { Running::Flat } else { Running::Upright };
        let layout = layout(holed(left, bottom, width, height).outlines(), |_| (running, 0, 0));
        prop_assert_eq!(layout.pieces.len(), 1);
        let found = blanks(&house, &[(0, &layout)]);

        let cut = |inside: [bool; 2]| kerf * inside.into_iter().filter(|side| *side).map(|_| 1).sum::<i64>();
        let across = inch(right.min(WIDTH) - left.max(0)) - cut([left > 0, right < WIDTH]);
        let up = inch(top.min(HEIGHT) - bottom.max(0)) - cut([bottom > 0, top < HEIGHT]);
        let kept = across.min(up) >= inch(16) && across.max(up) >= inch(24);
        let drop = if flat { Drop { width: up, length: across } } else { Drop { width: across, length: up } };
        prop_assert_eq!(&found[0].drops, &if kept { vec![drop] } else { vec![] });
        let size = if flat { (inch(HEIGHT), inch(WIDTH)) } else { (inch(WIDTH), inch(HEIGHT)) };
        prop_assert_eq!((found[0].width, found[0].length), size);
    }

    /// Walls as the house says, those not named last and in their own order; pieces as they are hung.
    #[test]
    fn blanks_come_in_building_order(turns in Just((0..6_u32).collect::<Vec<_>>()).prop_shuffle(), named in 0_usize..3) {
        let mut house = house();
        let walls = house.walls.len();
        house.building_order = house.walls.iter().rev().take(named).map(|wall| wall.name.clone()).collect();
        let whole = holed(-9, -9, 4, 4).outlines()[0].clone();
        let layout = layout(vec![whole; 6], |number| (Running::Upright, 0, turns[number]));
        let given: Vec<_> = (0..walls).map(|wall| (wall, &layout)).collect();
        let found = blanks(&house, &given);
        let mut order: Vec<usize> = (0..walls).rev().take(named).collect();
        order.extend(0..walls - named);
        let hung = (0..6_u32).map(|turn| turns.iter().position(|own| *own == turn));
        let pieces: Vec<_> = hung.flatten().collect();
        let wanted = order.iter().flat_map(|wall| pieces.iter().map(move |piece| (*wall, *piece)));
        for ((number, blank), (wall, piece)) in found.iter().enumerate().zip(wanted) {
            prop_assert_eq!((blank.order as usize, blank.wall as usize, blank.piece as usize), (number, wall, piece));
        }
        prop_assert_eq!(found.len(), 6 * walls);
    }
}
