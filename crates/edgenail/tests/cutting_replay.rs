//! Trees of cuts against a drawing of them, cell by cell, and what a saw cannot do.

mod cut_ground;

use cut_ground::inch;
use edgenail::Length;
use edgenail::cutting::{Blank, CutFault, CutNode, CutSheet, Part, Placed, Source, replay};
use proptest::prelude::*;

/// A sheet of so many cells, each a sixteenth of an inch; the kerf is a whole number of them.
const SHEET: (usize, usize) = (60, 80);

/// What becomes of a sheet, told without sizes of parts.
#[derive(Clone, Debug)]
enum Wish {
    Leaf(u8),
    /// Across or along, at how many hundredths of the part.
    Cut(bool, usize, Box<Self>, Box<Self>),
}

fn wish() -> impl Strategy<Value = Wish> {
    let leaf = (0_u8..4).prop_map(Wish::Leaf);
    leaf.prop_recursive(5, 24, 2, |inner| {
        (any::<bool>(), 1_usize..100, inner.clone(), inner)
            .prop_map(|(across, at, near, far)| Wish::Cut(across, at, Box::new(near), Box::new(far)))
    })
}

/// Cells of a sheet, each with the number of the part that it belongs to; the saw's are empty.
struct Drawing {
    cells: Vec<Vec<Option<usize>>>,
    kerf: usize,
    blanks: Vec<Blank>,
    leftovers: u32,
    parts: Vec<Part>,
}

/// A part as columns and rows from one cell to before another.
type Room = (std::ops::Range<usize>, std::ops::Range<usize>);

fn cells(count: usize) -> Length {
    Length::sixteenths(i64::try_from(count).unwrap_or(0))
}

impl Drawing {
    /// Draws what is wished and gives its tree; a part too small for its cut is one part.
    fn draw(&mut self, wish: &Wish, room: &Room) -> CutNode {
        let (columns, rows) = room.clone();
        match wish {
            Wish::Cut(across, at, near, far) => {
                let whole = if *across { &rows } else { &columns };
                let size = whole.len() * at / 100;
                if size == 0 {
                    return self.draw(&Wish::Leaf(3), room);
                }
                let middle = whole.start + size;
                let beyond = (middle + self.kerf).min(whole.end);
                let rooms = if *across {
                    [(columns.clone(), rows.start..middle), (columns, beyond..rows.end)]
                } else {
                    [(columns.start..middle, rows.clone()), (beyond..columns.end, rows)]
                };
                let first = Box::new(self.draw(near, &rooms[0]));
                let second = if rooms[1].0.is_empty() || rooms[1].1.is_empty() {
                    CutNode::Waste
                } else {
                    self.draw(far, &rooms[1])
                };
                CutNode::Split {
                    across: *across,
                    at: cells(size),
                    first,
                    second: Box::new(second),
                }
            }
            Wish::Leaf(kind) => self.leaf(*kind, room),
        }
    }

    fn leaf(&mut self, kind: u8, (columns, rows): &Room) -> CutNode {
        for x in columns.clone() {
            for y in rows.clone() {
                self.cells[x][y] = Some(self.parts.len());
            }
        }
        let place = u32::try_from(self.blanks.len()).unwrap_or(0);
        let (part, node) = match kind {
            0 | 1 => {
                let turned = kind == 1;
                let (width, length) = (cells(columns.len()), cells(rows.len()));
                let (width, length) = if turned { (length, width) } else { (width, length) };
                self.blanks.push(Blank {
                    wall: 0,
                    piece: place,
                    order: place,
                    sheet: 0,
                    width,
                    length,
                    may_turn: turned,
                    drops: vec![],
                });
                (
                    Part::Blank { blank: place, turned },
                    CutNode::Piece { blank: place, turned },
                )
            }
            2 => {
                self.leftovers += 1;
                let leftover = self.leftovers - 1;
                (Part::Offcut { leftover }, CutNode::Offcut { leftover })
            }
            _ => (Part::Waste, CutNode::Waste),
        };
        self.parts.push(part);
        node
    }
}

/// The part that the middle of a cell lies in.
fn part_at(parts: &[Placed], x: usize, y: usize) -> Option<usize> {
    let half = Length::sixteenths(1).half();
    let (x, y) = (cells(x) + half, cells(y) + half);
    let holds =
        |part: &Placed| part.x < x && x < part.x + part.width && part.y < y && y < part.y + part.length;
    parts.iter().position(holds)
}

fn sheet(tree: CutNode) -> CutSheet {
    let (width, length) = (cells(SHEET.0), cells(SHEET.1));
    CutSheet {
        source: Source::Sheet { sheet: 0 },
        sheet: 0,
        width,
        length,
        tree,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    /// Every cell comes out in the part that was drawn over it, and those of the saw in none.
    #[test]
    fn parts_lie_where_they_were_drawn(wish in wish(), kerf in 0_usize..5) {
        let mut drawing = Drawing {
            cells: vec![vec![None; SHEET.1]; SHEET.0],
            kerf,
            blanks: vec![],
            leftovers: 0,
            parts: vec![],
        };
        let tree = drawing.draw(&wish, &(0..SHEET.0, 0..SHEET.1));
        let parts = replay(&sheet(tree), &drawing.blanks, cells(kerf));
        prop_assert!(parts.is_ok(), "{parts:?}");
        let parts = parts.unwrap_or_default();
        let kinds: Vec<Part> = parts.iter().map(|part| part.part).collect();
        prop_assert_eq!(kinds, drawing.parts);
        for x in 0..SHEET.0 {
            for y in 0..SHEET.1 {
                prop_assert_eq!(part_at(&parts, x, y), drawing.cells[x][y], "{} {}", x, y);
            }
        }
    }
}

/// What is wrong is said with its figures, as the list of faults has them.
#[test]
fn faults_tell_their_figures() {
    let tell = |fault: CutFault| fault.to_string();
    let outside = tell(CutFault::CutOutside {
        at: inch(41),
        size: inch(37),
    });
    assert!(
        outside.contains(&inch(41).to_string()) && outside.contains(&inch(37).to_string()),
        "{outside}"
    );
    for fault in [
        CutFault::WrongSize { blank: 4321 },
        CutFault::Turned { blank: 4321 },
        CutFault::NoSuchBlank { blank: 4321 },
    ] {
        assert!(tell(fault).contains("blank 4321"), "{fault:?}");
    }
    assert!(tell(CutFault::NothingLeft).contains("nothing"));
}
