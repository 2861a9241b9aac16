//! What has to be added to the wood so that every edge that wants backing has it.
//!
//! [`blocking`] sets studs behind plumb edges first, because they shorten the bays, then blocks behind level ones, then
//! widens members that two panels may not share as they are.

mod added;
mod finding;
mod lie;
mod relieved;
mod room;
mod wide;
mod widen;

pub use added::{AddedStud, Block, BlockLie, Blocking, Impossible, WidenedMember};
pub use finding::{findings, narrow_members};
pub use lie::{Lumber, block_lumber, stud_lumber, wall_depth};
pub use wide::shared_width;
pub use widen::{TooNarrow, is_wide, lies_along, too_narrow};

use crate::edges::{EdgeRun, Lie, LineRule, PanelEdge, Site, Support, Unsupported};
use crate::frame::Frame;
use crate::geometry::{Interval, Rect};
use crate::house::{House, Sheet};
use crate::layout::{Joint, Layout};
use crate::length::Length;
use room::{NoRoom, Standing, Want};

/// Everything that has to be added to a frame so that no edge of a layout lacks the backing that it wants.
///
/// `runs` are the layout's edges on that frame. An edge that cannot be backed is listed with the reason.
pub fn blocking(house: &House, frame: &Frame, layout: &Layout, runs: &[EdgeRun]) -> Blocking {
    Site::new(house, frame).map_or_else(Blocking::default, |site| backing(&site, layout, runs))
}

/// As [`blocking`], for a frame that was brought together with its rules before.
pub fn backing(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun]) -> Blocking {
    let rule = LineRule::of(site.practice);
    let mut work = Work {
        site,
        layout,
        runs,
        rule,
        standing: Standing {
            site,
            added: Vec::new(),
        },
        out: Blocking::default(),
    };
    let bare: Vec<(&EdgeRun, Want)> = runs
        .iter()
        .filter(|run| run.lacks_backing())
        .map(|run| (run, work.want(run)))
        .collect();
    for (run, want) in bare.iter().filter(|(run, _)| run.side.is_plumb()) {
        work.stud(run, want);
    }
    let studs = work.standing.added.len();
    for (run, want) in bare.iter().filter(|(run, _)| !run.side.is_plumb()) {
        work.block(run, want, studs);
    }
    let wants: Vec<Want> = bare.into_iter().map(|(_, want)| want).collect();
    work.serve(&wants);
    widen::widen(site, layout, runs, &mut work.standing, &mut work.out);
    relieved::relieve(site, layout, runs, &mut work.out);
    work.out
}

const NO_STICK: &str = "no stick in stock is as long as the clear bay";

struct Work<'s, 'a> {
    site: &'s Site<'a>,
    layout: &'s Layout,
    runs: &'s [EdgeRun],
    rule: LineRule,
    standing: Standing<'s, 'a>,
    out: Blocking,
}

impl Work<'_, '_> {
    fn want(&self, run: &EdgeRun) -> Want {
        let edge = PanelEdge {
            side: run.side,
            from: run.from,
            to: run.to,
        };
        let facing = run.partner.and_then(|partner| {
            let first = self.runs.partition_point(|other| other.piece < partner);
            let others = self
                .runs
                .get(first..)
                .unwrap_or_default()
                .iter()
                .take_while(|other| other.piece == partner);
            let mut facing = others
                .filter(|other| other.side == run.side.opposite())
                .map(|other| PanelEdge {
                    side: other.side,
                    from: other.from,
                    to: other.to,
                })
                .filter(|other| other.span().overlaps(edge.span()))
                .filter(|other| (other.at() - edge.at()).abs() <= edge.span().len().max(self.rule.bay));
            facing.by_ref().min_by_key(|other| (other.at() - edge.at()).abs())
        });
        Want {
            run: run.id,
            edge,
            along: edge.span(),
            facing,
        }
    }

    /// Adds studs until nothing of a plumb edge is left bare.
    fn stud(&mut self, run: &EdgeRun, want: &Want) {
        let mut left = want.without(&self.rule, &self.standing.added);
        while let Some(along) = left.pop() {
            // What an added stud leaves may hang free; a short run is part of a longer stretch without wood.
            if along.len() <= self.site.practice.free_edge_most && along != want.along {
                continue;
            }
            let part = Want { along, ..*want };
            let (lumber, rect) = match self.stud_in_bay(run, &part) {
                Ok(placed) => placed,
                Err(because) => return self.impossible(run, because),
            };
            if !rect.y_span().overlaps(along) {
                return self.impossible(run, why_not(run, NoRoom::Across));
            }
            if self.longer_than_stick(rect.height(), &lumber) {
                return self.impossible(run, NO_STICK);
            }
            self.add_stud(rect, lumber.stick);
            if self.needs_double(run, &lumber) {
                self.double(rect, lumber.stick);
            }
            left.extend(Interval::subtract(along, &[rect.y_span()]));
        }
    }

    /// What a stud behind a stretch is cut from, and its face over the clear bay.
    fn stud_in_bay(&self, run: &EdgeRun, part: &Want) -> Result<(Lumber, Rect), &'static str> {
        let depth = wall_depth(self.site, part.along.lo);
        let place = |length: Length| {
            let lumber =
                stud_lumber(self.site, depth, length).ok_or("stock has no lumber to cut a stud from")?;
            let rect = self.standing.fit(&self.rule, part, &lumber);
            Ok((lumber, rect.map_err(|reason| why_not(run, reason))?))
        };
        let (lumber, rect) = place(part.along.len())?;
        // The bay is higher than what is bare: another stick may be long enough for it.
        if self.longer_than_stick(rect.height(), &lumber) {
            place(rect.height())
        } else {
            Ok((lumber, rect))
        }
    }

    fn add_stud(&mut self, rect: Rect, stick: u32) {
        self.standing.added.push(rect);
        let id = u32::try_from(self.out.studs.len()).unwrap_or(u32::MAX);
        self.out.studs.push(AddedStud {
            id,
            rect,
            stick,
            serves: Vec::new(),
        });
    }

    /// Two panels may not share one such stud here.
    fn needs_double(&self, run: &EdgeRun, lumber: &Lumber) -> bool {
        run.partner.is_some() && self.shared(run).is_some_and(|width| lumber.face < width)
    }

    fn shared(&self, run: &EdgeRun) -> Option<Length> {
        shared_width(self.site, run.area(), sheet_of(self.site, self.layout, run)?)
    }

    fn longer_than_stick(&self, length: Length, lumber: &Lumber) -> bool {
        let stick = self.site.house.stock.sticks.get(lumber.stick as usize);
        stick.is_none_or(|stick| stick.length < length)
    }

    /// A second stud beside one that was just added, where there is room on either side.
    fn double(&mut self, rect: Rect, stick: u32) {
        if let Some(second) = self.standing.beside(rect, rect.width()) {
            self.add_stud(second, stick);
        }
    }

    /// Adds blocks until nothing of a level edge is left bare that wants backing.
    fn block(&mut self, run: &EdgeRun, want: &Want, studs: usize) {
        if want.edge.lie() == Lie::Sloped {
            return self.impossible(run, "the edge follows a rake without a raked plate behind it");
        }
        let Some(lumber) = block_lumber(self.site, self.shared(run)) else {
            return self.impossible(run, "stock has no lumber to cut a block from");
        };
        let mut left = want.without(&self.rule, &self.standing.added);
        while let Some(along) = left.pop() {
            let part = Want { along, ..*want };
            let rect = match self.standing.fit(&self.rule, &part, &lumber) {
                Ok(rect) => rect,
                Err(reason) => return self.impossible(run, why_not(run, reason)),
            };
            if !rect.x_span().overlaps(along) {
                return self.impossible(run, why_not(run, NoRoom::Across));
            }
            if self.longer_than_stick(rect.width() - self.site.practice.block_clearance, &lumber) {
                return self.impossible(run, NO_STICK);
            }
            left.extend(Interval::subtract(along, &[rect.x_span()]));
            // Only an added stud shortens a bay; what is left of it may need nothing.
            let opening = run.joint == Joint::Opening;
            let bare = rect.x_span().intersect(along).unwrap_or(along);
            let area = Rect {
                x0: bare.lo,
                x1: bare.hi,
                ..run.area()
            };
            if studs > 0 && !self.site.wants_backing(false, opening, area, rect.width()) {
                continue;
            }
            self.standing.added.push(rect);
            let id = u32::try_from(self.out.blocks.len()).unwrap_or(u32::MAX);
            self.out.blocks.push(Block {
                id,
                rect,
                length: rect.width() - self.site.practice.block_clearance,
                lie: lumber.lie,
                depth: lumber.depth,
                stick: lumber.stick,
                fills_depth: lumber.depth >= wall_depth(self.site, rect.y0),
                serves: Vec::new(),
            });
        }
    }

    fn impossible(&mut self, run: &EdgeRun, because: &str) {
        self.out.impossible.push(Impossible {
            run: run.id,
            because: because.into(),
        });
    }

    /// Writes down which runs each block and stud holds.
    fn serve(&mut self, wants: &[Want]) {
        let rule = self.rule;
        let holds = |want: &Want, rect: &Rect| {
            let along = if want.edge.side.is_plumb() {
                rect.y_span()
            } else {
                rect.x_span()
            };
            want.edge.lie() != Lie::Sloped
                && along.overlaps(want.along)
                && rule.on(want.edge.depths(rect)).is_some()
        };
        let serves = |rect: &Rect, plumb: bool| -> Vec<u32> {
            let wants = wants
                .iter()
                .filter(|want| want.edge.side.is_plumb() == plumb && holds(want, rect));
            wants.map(|want| want.run).collect()
        };
        for stud in &mut self.out.studs {
            stud.serves = serves(&stud.rect, true);
        }
        for block in &mut self.out.blocks {
            block.serves = serves(&block.rect, false);
        }
    }
}

fn sheet_of<'a>(site: &Site<'a>, layout: &Layout, run: &EdgeRun) -> Option<&'a Sheet> {
    let piece = layout.pieces.get(run.piece as usize)?;
    site.house.stock.sheets.get(piece.sheet as usize)
}

/// Why an edge cannot be backed, in words.
fn why_not(run: &EdgeRun, reason: NoRoom) -> &'static str {
    match (reason, run.support, run.side.is_plumb()) {
        (
            NoRoom::Across,
            Support::Nothing {
                reason: Unsupported::NotNailable,
            },
            _,
        ) => "what lies behind it holds no nail and leaves no room for wood that does",
        (NoRoom::Across, ..) => "what stands there leaves no room for wood on its nail line",
        (NoRoom::Near, _, true) => "there is nothing below to stand a stud on",
        (NoRoom::Far, _, true) => "there is nothing above to nail a stud to",
        (NoRoom::Near, _, false) => "there is nothing on the left to nail a block to",
        (NoRoom::Far, _, false) => "there is nothing on the right to nail a block to",
    }
}

#[cfg(test)]
mod tests;
