//! The words that go with every result a structure depends on.

/// What every drawing, report and structural result carries.
pub const CAUTION: &str = "Planning aid only. It does not replace the construction documents. Whether this sheathing, its nailing \
    and its framing are adequate has to be confirmed by a licensed design professional and under the code in force where it is built.";
