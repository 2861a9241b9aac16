//! The words of the input that stand for one of a few values.

use crate::capacity::{
    AtOpenings, BoardMaterial, FaceMaterial, FacingEdition, LineMethod, NailEdition, PanelMaterial, PlanAxis,
    Plies,
};
use crate::house::{
    Acting, Bearing, BlockedEdges, Coating, CornerTurn, DatumChoice, DesignMethod, Direction, DrawnIn,
    Edition, End, Face, Interface, LoadKind, LoadLevel, MemberKindInBand, Method, NailTool, Objective,
    OpeningKind, RakeBuild, RimKind, RimSeam, RunningChoice, Scheduling, Sharing, SheathingPlace,
    StartChoice, StrengthAxis,
};
use crate::published::{FacingMaterial, Fastener, Grade, Pennyweight};

/// A type whose values have words.
pub(super) trait Choice: Copy + 'static {
    /// The words, in order.
    const NAMES: &'static [&'static str];
    /// The values, in the same order.
    const ALL: &'static [Self];

    /// The value of this word.
    fn named(word: &str) -> Option<Self> {
        let position = Self::NAMES.iter().position(|name| *name == word)?;
        Self::ALL.get(position).copied()
    }
}

/// Gives a type its words, and lets it be read from a field.
macro_rules! choices {
    ($($type:ty { $($variant:ident $word:literal),* $(,)? })*) => {
        $(
            impl Choice for $type {
                const NAMES: &'static [&'static str] = &[$($word),*];
                const ALL: &'static [Self] = &[$(Self::$variant),*];
            }

            impl super::value::Value for $type {
                fn take(item: &super::item::Item<'_, '_>) -> Option<Self> {
                    item.choice().and_then(|word| Self::named(&word))
                }

                fn placeholder() -> Self {
                    const { Self::ALL[0] }
                }

                fn show(&self) -> String {
                    match self {
                        $(Self::$variant => $word.to_owned(),)*
                    }
                }
            }
        )*

        /// Every word beside the value that it stands for, as JSON writes it.
        #[cfg(test)]
        fn written() -> Vec<(&'static str, String)> {
            vec![$($(($word, serde_json::to_string(&<$type>::$variant).unwrap()),)*)*]
        }
    };
}

choices! {
    Bearing { Concrete "concrete", Floor "floor" }
    Acting { Wind "wind", Seismic "seismic", Dead "dead" }
    BlockedEdges { All "all", WideBays "wide_bays", SegmentsOnly "segments_only" }
    Coating { Bright "bright", HotDipped "hot_dipped", Stainless "stainless" }
    CornerTurn { Outside "outside", Inside "inside" }
    DatumChoice { Flush "flush", HeldUp "held_up", Overhang "overhang", HalfPlate "half_plate", TopFlush "top_flush" }
    DesignMethod { Asd "asd", Lrfd "lrfd" }
    Direction { Across "across", Along "along" }
    DrawnIn { Inches "inches", FeetInches "feet_inches", Millimetres "millimetres" }
    End { Left "left", Right "right" }
    Face { Exterior "exterior", Interior "interior", Party "party" }
    Interface {
        RoofToPlate "roof_to_plate",
        PlateToRim "plate_to_rim",
        RimToPlate "rim_to_plate",
        RimToSill "rim_to_sill",
        SillToConcrete "sill_to_concrete",
        PlateToFloor "plate_to_floor",
    }
    LoadLevel { Strength "strength", Asd "asd" }
    MemberKindInBand { SawnJoist "sawn_joist", IJoist "i_joist", Truss "truss" }
    Method {
        Segmented "segmented",
        Perforated "perforated",
        ForceTransfer "force_transfer",
        Portal "portal",
        BracedPanel "braced_panel",
    }
    NailTool { Gun "gun", Hand "hand" }
    Objective { Money "money", Minutes "minutes" }
    OpeningKind { Door "door", Window "window", Garage "garage", Other "other" }
    RakeBuild { RakedPlates "raked_plates", Ladder "ladder" }
    RimKind { Sawn "sawn", Engineered "engineered" }
    RimSeam { Seam "seam", RunPast "run_past" }
    RunningChoice { Upright "upright", Flat "flat", Either "either" }
    SheathingPlace { Deck "deck", Standing "standing" }
    StartChoice { Left "left", Right "right", Either "either" }
    StrengthAxis { Length "length", Width "width" }

    AtOpenings { LeftOut "left_out", Counted "counted" }
    BoardMaterial {
        RegularFiberboard "regular_fiberboard",
        StructuralFiberboard "structural_fiberboard",
        HardboardSiding "hardboard_siding",
        HardboardPanelSiding "hardboard_panel_siding",
    }
    Edition { Sdpws2008 "2008", Sdpws2015 "2015", Sdpws2021 "2021" }
    FaceMaterial { GypsumWallboard "gypsum_wallboard", Other "other" }
    FacingEdition { Sdpws2008 "2008", Sdpws2015 "2015", Sdpws2021 "2021", Cmr780 "780_cmr" }
    FacingMaterial {
        GypsumWallboard "gypsum_wallboard",
        TwoPlyGypsumWallboard "two_ply_gypsum_wallboard",
        GypsumSheathing2Ft "gypsum_sheathing_2_ft",
        GypsumSheathing4Ft "gypsum_sheathing_4_ft",
        GypsumLathAndPlaster "gypsum_lath_and_plaster",
        PortlandCementPlaster "portland_cement_plaster",
        StructuralFiberboard "structural_fiberboard",
        Particleboard "particleboard",
        PlywoodSiding "plywood_siding",
        StructuralIOverGypsum "structural_i_over_gypsum",
        SheathingOverGypsum "sheathing_over_gypsum",
        PlywoodSidingOverGypsum "plywood_siding_over_gypsum",
        StapledStructuralI "stapled_structural_i",
        StapledStructuralIOverGypsum "stapled_structural_i_over_gypsum",
    }
    Fastener {
        Cooler5d "cooler_5d",
        Cooler6d "cooler_6d",
        Cooler8dOver6d "cooler_8d_over_6d",
        ScrewNo6 "screw_no_6",
        Roofing11Gauge "roofing_11_gauge",
        LathNail "lath_nail",
        WireLathNail "wire_lath_nail",
        Common6d "6d",
        Common8d "8d",
        Common10d "10d",
        Casing6d "casing_6d",
        Casing8d "casing_8d",
        Casing10d "casing_10d",
        Staple16Gauge "staple_16_gauge",
    }
    Grade { Sheathing "sheathing", StructuralI "structural_i" }
    LineMethod { Segmented "segmented", Perforated "perforated" }
    LoadKind { Wind "wind", Seismic "seismic" }
    NailEdition { Nds2005 "2005", Nds2018 "2018" }
    PanelMaterial { Osb "osb", Plywood3 "plywood3", Plywood4 "plywood4" }
    PlanAxis { X "x", Y "y" }
    Pennyweight { Six "6d", Eight "8d", Ten "10d" }
    Plies { Three "three", Four "four", Five "five", Osb "osb" }
    Scheduling { AsGiven "as_given", Cheapest "cheapest" }
    Sharing { ReducedStrength "reduced_strength", EqualDeflection "equal_deflection" }
    crate::capacity::StrengthAxis { AcrossStuds "across_studs", AlongStuds "along_studs" }
}

#[cfg(test)]
mod tests {
    //! What is read is what is written.

    #[test]
    fn every_word_is_the_one_that_json_writes() {
        for (word, json) in super::written() {
            assert_eq!(format!("\"{word}\""), json);
        }
    }
}
