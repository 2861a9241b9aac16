use super::*;
use crate::frame::frame_wall;
use crate::layout::Running;
use crate::read_house;
use proptest::prelude::*;

/// A wall with a door and a window, under a gable or not, lapping past a neighbour or not, with rates of all sizes.
fn wall(length: u32, gable: bool, laps: bool, rates: &[u32; 8]) -> String {
    let [kerf, small, allowance, narrow, very_narrow, set_9, strip, short] = rates;
    let half = length / 2;
    let top = if gable {
        format!(
            r#"{{"kind": "gable_truss", "ridge_x": "{half}", "heel": "4", "pitch": {{"rise": "6", "run": "12"}},
            "chord": "3 1/2", "web_width": "1 1/2", "web_spacing": "24", "sheathed": true}}"#
        )
    } else {
        r#"{"kind": "flat"}"#.to_owned()
    };
    let corners = if laps {
        r#""corners": [{"through": {"wall": "v", "end": "right"}, "butting": {"wall": "w", "end": "left"}}],"#
    } else {
        ""
    };
    let storey = r#""bottom": {"bears": "floor"}, "stack": [{"kind": "storey""#;
    format!(
        r#"{{"name": "h", "unit": "in", {corners}
        "practice": {{"kerf": "{kerf}/64", "strip_least": "{strip}", "end_short": "{short}/64"}},
        "rates": {{"small_under": {small}, "length_allowance": "{allowance}/8", "set_9": {set_9},
        "judgement": {{"narrow_under": "{narrow}", "very_narrow_under": "{very_narrow}"}}}},
        "walls": [{{"name": "w", "length": "{length}", "sections": [{{{storey}, "openings": [
            {{"name": "d", "kind": "door", "left": "40", "width": "38", "height": "82"}},
            {{"name": "o", "kind": "window", "left": "110", "sill": "36", "width": "48", "height": "46"}}]}}],
        "top": {top}}}]}},
        {{"name": "v", "length": "120", "sections": [{{{storey}}}], "top": {{"kind": "flat"}}}}]}}]}}"#
    )
}

proptest! {
    /// What is priced once for many strips is what each of them costs on its own, and no more than what is cut costs.
    #[test]
    fn alike_strips_cost_the_same(
        length in 180u32..500,
        gable in any::<bool>(),
        laps in any::<bool>(),
        (kerf, small, allowance, narrow) in (0u32..20, 1u32..30, 0u32..16, 1u32..40),
        (very_narrow, set_9, strip, short) in (1u32..40, 0u32..40, 2u32..30, 0u32..8),
        (low, high) in (0i64..200, 8i64..130),
        upright in any::<bool>(),
        ends in any::<(bool, bool)>(),
        cuts in prop::collection::vec(1i64..8_000, 2..24),
    ) {
        let rates = [kerf, small, allowance, narrow, very_narrow.min(narrow), set_9, strip, short];
        let (house, _) = read_house(wall(length, gable, laps, &rates).as_bytes()).map_err(|e| TestCaseError::fail(format!("{e:?}")))?;
        let frame = frame_wall(&house, 0).expect("it has a wall");
        let space = Space::new(&house, &frame).expect("it has a wall");
        let y = Interval::new(Length::inches(low), Length::inches(low + high));
        let running = if upright { Running::Upright } else { Running::Flat };
        let slot = Slot { y, running, lowest: ends.0, uppermost: ends.1, start: crate::house::End::Left, reach: Length::ZERO };
        let sixteenths = |at: &i64| space.x.lo + Length::sixteenths(*at);
        let mut stops: Vec<Length> = cuts.iter().map(sixteenths).filter(|x| *x < space.x.hi).collect();
        stops.extend([space.x.lo, space.x.hi]);
        stops.sort_unstable();
        stops.dedup();
        let mut strips = StripPrices::new(&space, slot);
        for (from, start) in stops.iter().enumerate() {
            let through = strips.through(*start);
            for end in stops.iter().skip(from + 1) {
                let strip = Interval::new(*start, *end);
                let (x, at) = strips.net(strip);
                if strip.len() < space.practice.filler_least {
                    continue;
                }
                let grouped = strips.group(x, at, strip, through).is_some();
                let (known, own) = (strips.of(strip, through), strips.priced(x, at));
                for (kind, sheet) in space.sheets.iter().enumerate() {
                    let (known, own) = (strips.of_kind(known, kind), strips.of_kind(own, kind));
                    prop_assert!(!grouped || known == own, "{:?} and {:?}: {:?} from {:?}", known, own, strip, kind);
                    // What is cut out of it only adds to it; the lowest course begins where the wall does.
                    let cut = strips.exact.cut(strip, *sheet).filter(|_| !ends.0 || low == 0);
                    if let (Some(known), Some(cut)) = (known, cut) {
                        prop_assert!(known.cost <= cut.cost, "{:?} of {:?}: {:?} from {:?}", known, cut, strip, kind);
                    }
                }
            }
        }
    }
}
