//! A new job from a few answers.

use crate::refused::Refused;
use scenarios::Answers;
use scenarios::units::System;
use serde::Deserialize;

/// Answers as a page has them; each may be left out.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
struct Given {
    units: Option<String>,
    title: Option<String>,
}

/// A scenario file from such answers over the usual ones.
pub(crate) fn starter(answers: &str) -> Result<String, Refused> {
    let given: Given = serde_json::from_str(answers)?;
    let units = given.units.as_deref().map(str::parse).transpose().map_err(Refused::Message)?;
    let usual = Answers::usual(units.unwrap_or(System::Us));
    Ok(scenarios::starter(&Answers { title: given.title.unwrap_or(usual.title), ..usual }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_answer_is_needed_and_each_that_is_given_stands_in_the_file() {
        assert_eq!(starter("{}").unwrap(), scenarios::starter(&Answers::default()));
        let text = starter(r#"{"units":"metric","title":"Lower yard"}"#).unwrap();
        assert!(text.contains("title = \"Lower yard\"") && text.contains("units = \"metric\""), "{text}");
        assert!(matches!(starter(r#"{"units":"ells"}"#), Err(Refused::Message(_))));
    }
}
