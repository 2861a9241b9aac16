//! The list of members of a frame.

use super::Canvas;
use crate::drawing::page::Row;
use crate::frame::{MemberKind, Origin};
use crate::length::{Length, Rounding};
use std::cmp::Reverse;
use std::collections::BTreeMap;

impl Canvas<'_> {
    /// What the frame is made of before anything is added: how many members of each length, to the long point.
    pub(super) fn member_rows(&self) -> Vec<Row> {
        let mut kinds: BTreeMap<MemberKind, BTreeMap<Reverse<Length>, u32>> = BTreeMap::new();
        for member in &self.input.frame.members {
            let edges = member.face.edges().map(|(a, b)| a.distance(b));
            let length = edges.max().unwrap_or_default();
            let is_own = match member.kind {
                MemberKind::SubfloorEdge | MemberKind::NeighbourStud | MemberKind::NeighbourPlate => false,
                _ => member.origin != Origin::Added,
            };
            if is_own {
                *kinds
                    .entry(member.kind)
                    .or_default()
                    .entry(Reverse(length))
                    .or_default() += 1;
            }
        }
        let mut rows = vec![Row::Heading("Members: how many, and how long".into())];
        for (kind, lengths) in kinds {
            let of = |(Reverse(length), count): (&Reverse<Length>, &u32)| {
                format!("{count} of {}", self.show(*length, Rounding::Nearest))
            };
            let lengths: Vec<String> = lengths.iter().map(of).collect();
            rows.push(Row::Text(
                String::new(),
                format!("{}: {}", name_of(kind), lengths.join(", ")),
            ));
        }
        rows
    }
}

/// What a framer calls a member.
const fn name_of(kind: MemberKind) -> &'static str {
    match kind {
        MemberKind::Mudsill => "mudsill",
        MemberKind::BottomPlate => "bottom plate",
        MemberKind::TopPlate => "top plate",
        MemberKind::RakedPlate => "raked plate",
        MemberKind::Stud | MemberKind::AddedStud => "stud",
        MemberKind::EndStud => "end stud",
        MemberKind::PostStud => "end post stud",
        MemberKind::KingStud => "king stud",
        MemberKind::Trimmer => "trimmer",
        MemberKind::Header => "header",
        MemberKind::Sill => "sill",
        MemberKind::Cripple => "cripple",
        MemberKind::Block => "block",
        MemberKind::Rim => "rim",
        MemberKind::JoistEnd => "joist end",
        MemberKind::EdgeJoist => "edge joist",
        MemberKind::SubfloorEdge => "edge of the subfloor",
        MemberKind::TrussChord => "truss chord",
        MemberKind::TrussWeb => "truss web",
        MemberKind::TrussEnd => "truss end",
        MemberKind::LadderStud => "ladder stud",
        MemberKind::NeighbourStud => "stud of the next wall",
        MemberKind::NeighbourPlate => "plate or floor of the next wall",
    }
}
