//! One layout through all stages of a wall, once: what the search compares and a plan reports.

use crate::blocking::{self, Blocking, backing};
use crate::edges::{self, EdgeRun, Site};
use crate::finding::{Finding, Severity};
use crate::frame::Frame;
use crate::house::House;
use crate::layout::{Layout, LayoutSpec, lay_out, rules};
use crate::nailing::{self, Nailing, nail_all};
use crate::price::{Cost, Prices, cost};

/// A layout with everything that follows from it.
#[derive(Clone, Debug)]
pub struct Evaluated {
    /// What it was made from.
    pub spec: LayoutSpec,
    /// The pieces.
    pub layout: Layout,
    /// What their edges land on, with the backing in place.
    pub runs: Vec<EdgeRun>,
    /// What is added to the wood.
    pub blocking: Blocking,
    /// The frame with what is added.
    pub backed: Frame,
    /// The nails.
    pub nailing: Nailing,
    /// What is wrong with it or worth a thought once everything is added, gravest first.
    pub findings: Vec<Finding>,
    /// What would be wrong with its edges if nothing were added: what `blocking` mends.
    pub mended: Vec<Finding>,
    /// What it costs.
    pub cost: Cost,
}

/// Takes a layout through all stages: layout, edges, blocking, edges on the backed frame, nailing, price.
///
/// A layout of single panels goes the same way as one made of courses. Nothing is chosen here.
pub fn evaluate(house: &House, frame: &Frame, spec: LayoutSpec) -> Evaluated {
    let layout = lay_out(house, frame, &spec);
    let judged = rules(house, frame, &layout);
    BackedLayout::new(house, frame, spec, layout, judged).nailed(house, frame)
}

/// A layout with its edges and its backing, not nailed yet.
#[derive(Debug)]
pub struct BackedLayout {
    spec: LayoutSpec,
    layout: Layout,
    /// What its edges land on if nothing is added.
    bare: Vec<EdgeRun>,
    /// What is added to the wood.
    pub blocking: Blocking,
    /// What is wrong with the layout and cannot be backed, or worth a thought.
    pub findings: Vec<Finding>,
    /// What would be wrong with its edges if nothing were added.
    mended: Vec<Finding>,
}

impl BackedLayout {
    /// Backs a layout: `layout` is what the spec gives on this frame, `judged` what its rules say.
    pub fn new(house: &House, frame: &Frame, spec: LayoutSpec, layout: Layout, judged: Vec<Finding>) -> Self {
        let bare = edges::edges(house, frame, &layout);
        let mut findings = judged;
        let (mut blocking, mut mended) = (Blocking::default(), Vec::new());
        if let Some(site) = Site::new(house, frame) {
            blocking = backing(&site, &layout, &bare);
            findings.extend(blocking::findings(&site, &layout, &bare, &blocking));
            let mends = bare.iter().filter(|run| !blocking.leaves(run));
            mended = edges::unsupported(&site, &layout, mends);
        }
        Self {
            spec,
            layout,
            bare,
            blocking,
            findings,
            mended,
        }
    }

    /// Nails it: edges on the backed frame, nails, price.
    pub fn nailed(self, house: &House, frame: &Frame) -> Evaluated {
        let Self {
            spec,
            layout,
            bare,
            blocking: added,
            mut findings,
            mended,
        } = self;
        let backed = frame.with(&added);
        let mut runs = Vec::new();
        let mut nailing = Nailing::default();
        if let Some(site) = Site::new(house, &backed) {
            runs = edges::runs_with(&site, &layout, &bare, frame.members.len());
            let (rows, snags) = nail_all(&site, &layout, &runs);
            // What cannot be backed was told with its reason.
            let told: Vec<&EdgeRun> = bare.iter().filter(|run| added.leaves(run)).collect();
            let is_told = |run: &EdgeRun| {
                let same = |other: &&EdgeRun| (other.piece, other.edge) == (run.piece, run.edge);
                let shared = |other: &EdgeRun| {
                    let (a, b) = (other.area(), run.area());
                    a.x_span().overlaps(b.x_span()) || a.y_span().overlaps(b.y_span())
                };
                told.iter().any(|other| same(other) && shared(other))
            };
            let left = runs.iter().filter(|run| !is_told(run));
            findings.extend(edges::unsupported(&site, &layout, left));
            findings.extend(edges::findings(&site, &layout, &runs));
            findings.extend(blocking::narrow_members(&site, &layout, &runs));
            findings.extend(nailing::findings(&site, &layout, &rows, &snags));
            nailing = rows;
        }
        findings.sort_by_key(|finding| finding.severity);
        let cost = Prices::new(house, frame)
            .map_or_else(Cost::default, |prices| cost(&prices, &layout, &added, &nailing));
        Evaluated {
            spec,
            layout,
            runs,
            blocking: added,
            backed,
            nailing,
            findings,
            mended,
            cost,
        }
    }
}

impl Evaluated {
    /// Findings that forbid to build it so.
    pub fn refusals(&self) -> impl Iterator<Item = &Finding> {
        self.findings
            .iter()
            .filter(|finding| finding.severity == Severity::Refuse)
    }
}

#[cfg(test)]
mod tests;
