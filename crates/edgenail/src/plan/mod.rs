//! The whole plan of a house.

mod compose;
mod demand;
mod document;
mod figures;
mod framed;
mod given;
mod impossible;
mod law;
mod resisted;
mod shared;
mod sheet;
mod short;

pub use compose::{plan_house, plan_house_on};
pub use figures::Figures;
pub use framed::Framed;

use crate::amount::Amount;
use crate::capacity::{LineSchedule, StoreyLine};
use crate::cutting::CutPlan;
use crate::error::Error;
use crate::evaluate::Evaluated;
use crate::finding::Finding;
use crate::frame::Frame;
use crate::house::House;
use crate::joint::HouseCost;
use crate::proof::Proof;
use crate::reading::{Assumed, read_house};
use crate::report::{self, Results, WallResults};
use crate::search::Alternative;
use crate::start::Start;
use crate::steps::Step;
use crate::table::Table;
use crate::takeoff::Takeoff;

/// Everything that is known of one wall.
#[derive(Clone, Debug)]
pub struct WallPlan {
    /// Its name.
    pub name: String,
    /// Its place in the house's list.
    pub index: u32,
    /// Its frame, before anything is added.
    pub frame: Frame,
    /// Its layout with all that follows from it.
    pub built: Evaluated,
    /// What is wrong or worth a thought: measurements first, then the layout.
    pub findings: Vec<Finding>,
    /// How to begin.
    pub start: Option<Start>,
    /// The order of work.
    pub steps: Vec<Step>,
    /// The layout was given, not searched for.
    pub given: bool,
    /// What else was weighed.
    pub alternatives: Vec<Alternative>,
    /// Arcs that the search priced.
    pub effort: u64,
    /// Layouts that were built through all stages and priced.
    pub layouts_built: u64,
    /// What every layout that might have been chosen costs at least, if it has no more to mend; the cost of a layout that
    /// was given.
    pub bound: Amount,
    /// How good the layout is known to be; nothing for one that was given.
    pub proof: Option<Proof>,
}

/// What is known of the house's demand.
#[derive(Clone, Debug)]
struct Resistance {
    schedules: Vec<LineSchedule>,
    lines: Vec<StoreyLine>,
}

/// The plan of a house: immutable, so that any number of threads may read it.
#[derive(Clone, Debug)]
pub struct Plan {
    house: House,
    assumed: Vec<Assumed>,
    walls: Vec<WallPlan>,
    cutting: CutPlan,
    cost: HouseCost,
    takeoff: Takeoff,
    resistance: Resistance,
    findings: Vec<Finding>,
}

impl Plan {
    fn new(
        house: House,
        assumed: Vec<Assumed>,
        walls: Vec<WallPlan>,
        cutting: CutPlan,
        cost: HouseCost,
        takeoff: Takeoff,
        resistance: Resistance,
    ) -> Self {
        let findings = walls
            .iter()
            .flat_map(|wall| wall.findings.iter().cloned())
            .collect();
        Self {
            house,
            assumed,
            walls,
            cutting,
            cost,
            takeoff,
            resistance,
            findings,
        }
    }

    /// Shows the plan to the report.
    fn results<T>(&self, read: impl FnOnce(&Results<'_>) -> T) -> T {
        let walls: Vec<WallResults<'_>> = self
            .walls
            .iter()
            .map(|wall| WallResults {
                frame: &wall.built.backed,
                layout: &wall.built.layout,
                edges: &wall.built.runs,
                blocking: &wall.built.blocking,
                nailing: &wall.built.nailing,
                cost: &wall.built.cost,
                steps: &wall.steps,
                alternatives: &wall.alternatives,
                effort: wall.effort,
                built: wall.layouts_built,
                bound: wall.bound,
                proof: wall.proof.as_ref(),
            })
            .collect();
        read(&Results {
            house: &self.house,
            walls: &walls,
            cutting: &self.cutting,
            takeoff: &self.takeoff,
            capacity: &self.resistance.lines,
            findings: &self.findings,
        })
    }

    /// The house as it was understood.
    pub fn house(&self) -> &House {
        &self.house
    }

    /// What the user did not say and the library filled in.
    pub fn assumed(&self) -> &[Assumed] {
        &self.assumed
    }

    /// The walls, in the order of the house.
    pub fn walls(&self) -> &[WallPlan] {
        &self.walls
    }

    /// The wall of this name.
    pub fn wall(&self, name: &str) -> Option<&WallPlan> {
        self.walls.iter().find(|wall| wall.name == name)
    }

    /// Which sheet every piece comes from.
    pub fn cutting(&self) -> &CutPlan {
        &self.cutting
    }

    /// What the walls cost with the sheets that the house buys for them, and how good that is known to be.
    ///
    /// ```
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let cost = plan.cost();
    /// assert!(cost.bound <= cost.total && cost.sheets < cost.total);
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn cost(&self) -> &HouseCost {
        &self.cost
    }

    /// What to buy.
    pub fn takeoff(&self) -> &Takeoff {
        &self.takeoff
    }

    /// What its walls resist of the house's demand, read off what was built: wall by wall, wind before earthquake, from the
    /// highest storey down. Empty where the house has no demand.
    ///
    /// It does not replace the code in force or a licensed design professional; see [`crate::CAUTION`].
    ///
    /// ```
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let line = &plan.capacity()[0];
    /// assert!(line.ratio().is_some_and(|ratio| ratio > 0.0) && line.derivation.text().contains("V_R"));
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn capacity(&self) -> &[StoreyLine] {
        &self.resistance.lines
    }

    /// What was weighed for segments whose sheathing the demand chooses, wall by wall from the highest storey down; the
    /// chosen ones stand in [`Plan::house`]. Empty where the segments say it themselves.
    pub fn schedules(&self) -> &[LineSchedule] {
        &self.resistance.schedules
    }

    /// The whole plan as one JSON document, with the same bytes in every language.
    pub fn json(&self) -> String {
        document::write(self)
    }

    /// What was found on all walls.
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// Every table of the plan, each defined in [`crate::report`].
    pub fn tables(&self) -> Vec<Table> {
        self.results(|results| {
            report::definitions()
                .iter()
                .filter_map(|table| report::table(results, table.name))
                .collect()
        })
    }

    /// The table of this name.
    pub fn table(&self, name: &str) -> Option<Table> {
        self.results(|results| report::table(results, name))
    }

    /// Why this layout of a wall and not another: each alternative beside it, as a small table of the parts of its cost that
    /// are not the same, to be read by a person; the table `differences` holds the same as numbers. `None` where no wall has
    /// this name.
    ///
    /// ```
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let text = plan.why(&plan.walls()[0].name);
    /// assert!(text.is_some_and(|text| text.contains("Alternative 1:")));
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn why(&self, wall: &str) -> Option<String> {
        let index = self.wall(wall)?.index;
        self.results(|results| {
            let of_wall = results.walls.iter().find(|results| results.frame.wall == index)?;
            Some(report::why(&self.house, of_wall))
        })
    }

    /// How many pages the drawing of all sheets that are cut has: at least one.
    pub fn cut_sheet_pages(&self) -> usize {
        sheet::cut_pages(&self.house, &self.walls, &self.cutting)
    }

    /// A page of the drawing of all sheets that are cut, as SVG; pages count from 0. `None` past the last.
    ///
    /// ```
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let pages: Vec<String> = (0..plan.cut_sheet_pages()).filter_map(|page| plan.cut_sheets_svg(page)).collect();
    /// assert_eq!(pages.len(), plan.cut_sheet_pages());
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn cut_sheets_svg(&self, page: usize) -> Option<String> {
        Some(sheet::cut_page(&self.house, &self.walls, &self.cutting, page)?.svg())
    }

    /// The drawing of a wall with its sheathing, as SVG; `None` where no wall has this name.
    pub fn wall_svg(&self, wall: &str) -> Option<String> {
        Some(sheet::wall(&self.house, self.wall(wall)?, &self.resistance.lines)?.svg())
    }

    /// The drawing of a wall's frame, as SVG: its members, and what is added before the sheets. `None` where no wall
    /// has this name.
    ///
    /// ```
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let frame = plan.frame_svg(&plan.walls()[0].name);
    /// assert!(frame.is_some_and(|svg| svg.contains("stud layout")));
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn frame_svg(&self, wall: &str) -> Option<String> {
        Some(sheet::frame(&self.house, self.wall(wall)?)?.svg())
    }
}

/// Plans the house that this JSON text describes.
///
/// # Errors
///
/// [`Error::Issues`] with every fault of the text; otherwise as [`plan_house`].
///
/// ```
/// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
/// assert!(plan.table("panels").is_some_and(|panels| panels.len() > 20));
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn plan_json(text: &str) -> Result<Plan, Error> {
    plan_bytes(text.as_bytes())
}

/// Plans the house that these bytes of JSON describe.
///
/// # Errors
///
/// As [`plan_json`]; bytes that are not UTF-8 are an issue too.
pub fn plan_bytes(bytes: &[u8]) -> Result<Plan, Error> {
    let (house, assumed) = read_house(bytes).map_err(|issues| Error::Issues { issues })?;
    plan_house(house, assumed)
}
