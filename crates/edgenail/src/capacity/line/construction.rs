//! What a wall line is sheathed with: one face, or two acting together.

use super::WallLine;
use crate::capacity::derivation::Derivation;
use crate::capacity::fault::within;
use crate::capacity::question::FacesQuery;
use crate::capacity::unit_shear::{UnitShear, unit_shear};
use crate::capacity::{FacesCapacity, Method, faces};
use crate::issue::Issue;
use crate::published::Confidence;

/// What a foot of the line resists.
#[derive(Clone, Copy, Debug)]
pub struct Construction {
    /// The first face.
    pub unit: UnitShear,
    /// Both faces, where another one was given.
    pub both: Option<FacesCapacity>,
}

impl Construction {
    /// Looks the line's faces up.
    pub(super) fn of(line: &WallLine) -> Result<Self, Vec<Issue>> {
        let of_query = |issues| within("query", issues);
        let unit = unit_shear(&line.query).map_err(of_query)?;
        let both = match both_faces(line) {
            Some(query) => Some(faces(&query, &mut Derivation::default()).map_err(of_query)?),
            None => None,
        };
        Ok(Self { unit, both })
    }

    /// Nominal unit shear in pounds per foot.
    pub fn nominal(&self) -> f64 {
        self.both.map_or(self.unit.nominal, |both| both.nominal)
    }

    /// Design unit shear in pounds per foot.
    pub fn design(&self) -> f64 {
        self.both.map_or(self.unit.design, |both| both.design)
    }

    /// Apparent stiffness in kips per inch; none of an estimate, or of faces of unlike materials.
    pub fn stiffness(&self) -> Option<f64> {
        self.both.map_or(self.unit.stiffness, |both| both.stiffness)
    }

    /// The least confidence of all that was used; the rules that put two faces together were recalled.
    pub(super) fn confidence(&self) -> Confidence {
        self.both.map_or(self.unit.confidence, |_| Confidence::Memory)
    }

    /// The steps to the design unit shear; its symbol and its value.
    pub(super) fn explain(&self, line: &WallLine, derivation: &mut Derivation) -> (&'static str, f64) {
        if let Some(query) = both_faces(line)
            && faces(&query, derivation).is_ok()
        {
            return ("v_c", self.design());
        }
        self.unit.explain(derivation);
        (self.unit_symbol(), self.design())
    }

    /// Symbol of the design unit shear, after [`Self::explain`].
    pub(super) fn symbol(&self) -> &'static str {
        if self.both.is_some() {
            "v_c"
        } else {
            self.unit_symbol()
        }
    }

    /// Symbol of the apparent stiffness.
    pub(super) fn stiffness_symbol(&self) -> &'static str {
        if self.both.is_some() { "G_ac" } else { "G_a" }
    }

    fn unit_symbol(&self) -> &'static str {
        match self.unit.query.method {
            Method::Asd => "v_ASD",
            Method::Lrfd => "v_LRFD",
        }
    }
}

/// The question of both faces, where the line has another one.
fn both_faces(line: &WallLine) -> Option<FacesQuery> {
    Some(FacesQuery {
        one: line.query,
        other: line.other_face?,
        joints_apart: line.joints_apart,
    })
}
