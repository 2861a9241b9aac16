//! A house read and framed, before any sheet: the stages that need no layout.

use super::document::framed;
use super::{Plan, plan_house};
use crate::capacity::schedule_house;
use crate::error::Error;
use crate::frame::{Frame, frame_wall};
use crate::house::House;
use crate::reading::{Assumed, read_house};
use crate::report::members_of;
use crate::table::Table;

/// A house with the frames of its walls, before anything is added for the sheets. It takes a fraction of a plan's time: what
/// is wrong with a house, and what a wall is framed of, is known before a layout is searched for.
///
/// ```
/// let framed = edgenail::plan::Framed::read(edgenail::demo::HOUSE_JSON.as_bytes())?;
/// assert_eq!(framed.frames().len(), framed.house().walls.len());
/// assert!(framed.members().len() > 100);
/// # Ok::<(), edgenail::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Framed {
    said: House,
    house: House,
    assumed: Vec<Assumed>,
    frames: Vec<Frame>,
}

impl Framed {
    /// Reads the house that bytes of JSON describe, and frames its walls.
    ///
    /// # Errors
    ///
    /// [`Error::Issues`] with every fault of the text.
    pub fn read(bytes: &[u8]) -> Result<Self, Error> {
        let (said, assumed) = read_house(bytes).map_err(|issues| Error::Issues { issues })?;
        let mut house = said.clone();
        // A demand may choose sheets and nailing of segments, which the frame follows.
        schedule_house(&mut house);
        let frames = (0..house.walls.len()).map(|wall| {
            frame_wall(&house, wall).ok_or_else(|| Error::Internal {
                message: "a wall that was read has no frame".to_owned(),
            })
        });
        let frames = frames.collect::<Result<_, _>>()?;
        Ok(Self {
            said,
            house,
            assumed,
            frames,
        })
    }

    /// The house as it was understood, with what its demand chose.
    pub fn house(&self) -> &House {
        &self.house
    }

    /// What the user did not say and the library filled in.
    pub fn assumed(&self) -> &[Assumed] {
        &self.assumed
    }

    /// The frames, in the order of the house's walls.
    pub fn frames(&self) -> &[Frame] {
        &self.frames
    }

    /// The members of all frames: the table `members` of a plan without what the sheets need added.
    pub fn members(&self) -> Table {
        members_of(&self.house, &self.frames)
    }

    /// The house as it was understood with what was assumed, and the members, as one JSON document; its `house` can be read
    /// again.
    pub fn json(&self) -> String {
        framed(&self.said, &self.assumed, &self.members())
    }

    /// Goes on to the plan.
    ///
    /// # Errors
    ///
    /// As [`plan_house`].
    pub fn plan(&self) -> Result<Plan, Error> {
        plan_house(self.said.clone(), self.assumed.clone())
    }
}
