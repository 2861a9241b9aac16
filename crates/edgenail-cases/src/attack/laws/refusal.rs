//! What is refused is refused in words that a user can act on.

use edgenail::Error;
use edgenail::issue::{Code, Issue};
use serde_json::Value;

/// Every issue names its field, what was found there and what is allowed.
pub fn issues(document: &[u8], issues: &[Issue]) {
    assert!(!issues.is_empty(), "refused without an issue");
    let tree: Option<Value> = serde_json::from_slice(document).ok();
    for issue in issues {
        assert!(
            !issue.message.is_empty() && !issue.allowed.is_empty(),
            "{issue:?}"
        );
        assert!(issue.path.is_empty() || issue.path.starts_with('/'), "{issue:?}");
        // Of two values of one key this tree keeps another than the library does.
        let Some(tree) = tree
            .as_ref()
            .filter(|_| issues.iter().all(|issue| issue.code != Code::DuplicateKey))
        else {
            continue;
        };
        assert!(
            stands(tree, &issue.path),
            "no field stands at {} and none could: {issue:?}",
            issue.path
        );
    }
}

/// There is a value at a pointer, or an object on the way to it that lacks it.
fn stands(tree: &Value, pointer: &str) -> bool {
    let mut node = tree;
    for part in pointer.split('/').skip(1) {
        let next = match node {
            Value::Object(fields) => fields.get(&part.replace("~1", "/").replace("~0", "~")),
            Value::Array(items) => match part.parse().ok().and_then(|index: usize| items.get(index)) {
                Some(item) => Some(item),
                None => return false,
            },
            _ => return false,
        };
        match next {
            Some(next) => node = next,
            None => return node.is_object(),
        }
    }
    true
}

/// An error of a whole plan: faults of the input, or a wall without a layout. The library never contradicts itself.
pub fn refused(document: &[u8], error: &Error) {
    match error {
        Error::Issues { issues } => self::issues(document, issues),
        Error::NoLayout {
            wall,
            message,
            remedies,
        } => {
            assert!(!wall.is_empty() && !message.is_empty(), "{error:?}");
            for change in remedies.iter().flat_map(|remedy| &remedy.changes) {
                let said = !change.demand.is_empty() && !change.remedy.is_empty();
                assert!(
                    said && change.path.starts_with('/') && change.found != change.wanted,
                    "{change:?}"
                );
            }
        }
        other => panic!("{other:?}"),
    }
}
