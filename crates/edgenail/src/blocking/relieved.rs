//! Edges that nothing could be set behind, and that what was set elsewhere relieves.

use super::Blocking;
use crate::edges::{EdgeRun, Site, runs_with};
use crate::layout::Layout;

/// Keeps of the edges that cannot be backed those that still want it once everything else is set: wood behind a
/// neighbouring stretch may shorten a bay so far that nothing is wanted in it.
pub(super) fn relieve(site: &Site<'_>, layout: &Layout, runs: &[EdgeRun], out: &mut Blocking) {
    if out.impossible.is_empty() {
        return;
    }
    let backed = site.frame.with(out);
    let Some(after) = Site::new(site.house, &backed) else {
        return;
    };
    let left = runs_with(&after, layout, runs, site.frame.members.len());
    let is_bare = |run: &EdgeRun| {
        left.iter().any(|other| {
            let same = (other.piece, other.edge) == (run.piece, run.edge);
            same && other.lacks_backing() && other.from < run.to && run.from < other.to
        })
    };
    out.impossible
        .retain(|impossible| runs.get(impossible.run as usize).is_some_and(is_bare));
}
