//! What a call may return.

/// What a call returns. A number is never changed and never used again for something else.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_status {
    /// The call did what it says.
    Ok = 0,
    /// A pointer that must point at something is NULL; nothing was done.
    NullPointer = 1,
    /// A length, count, capacity or index is below zero, or too large for memory; nothing was done.
    BadLength = 2,
    /// The row size is not one that this library can fill; nothing was done.
    RowSize = 3,
    /// There is no table, column, row, wall or entry of this name or index.
    NotFound = 4,
    /// The column holds another kind of value than the function gives.
    WrongKind = 5,
    /// A number given in place of a name, such as a field of an entry, has no meaning.
    BadChoice = 6,
    /// A batch holds as many houses as it takes; outcomes have to be taken first. Nothing was done.
    Full = 7,
    /// The buffer is too small. The needed size was written; nothing else was.
    BufferTooSmall = 10,
    /// The text is not UTF-8.
    NotUtf8 = 11,
    /// The text is not UTF-16: a surrogate stands alone.
    NotUtf16 = 12,
    /// The input has faults; each is an entry of the error list.
    Input = 100,
    /// No layout of a wall satisfies the rules that may not be broken. The first entry of the error list tells the rule; each
    /// further one, of the code `unmet_demand`, a demand that cannot be met beside the others: its field, what it says, what
    /// was tried in its place and makes the wall possible. Which of them belong together, `edgenail_error_json` tells.
    NoLayout = 200,
    /// The batch was cancelled: it has no further outcomes.
    Cancelled = 201,
    /// The library failed; a fault of the library, never of the caller.
    Internal = 250,
}
